using System.Net.Sockets;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Ingest.Devices;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Storage;

namespace PlantWatch.Server.Hosting;

/// <summary>What keeps a server from starting, where a person can mend it: in one sentence. Anything else is a defect and keeps its trace.</summary>
internal static class StartFailure
{
    public static string? Explain(Exception fault) => fault switch
    {
        BrokerNotSafeException or TlsFilesException or DevicesFileException => fault.Message,
        StorageException or RecordInUseException => fault.Message,
        SocketException { SocketErrorCode: SocketError.AddressAlreadyInUse } => "the broker's port is taken. Set PlantWatch__Broker__Port, or PlantWatch__Broker__Mode=External to use the broker that is there.",
        IOException { InnerException: Microsoft.AspNetCore.Connections.AddressInUseException } => "the page's port is taken. Name another: --urls http://127.0.0.1:PORT",
        IOException or UnauthorizedAccessException => fault.Message,
        _ => null,
    };
}
