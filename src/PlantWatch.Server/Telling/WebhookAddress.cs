namespace PlantWatch.Server.Telling;

/// <summary>What is wrong with an address. The default is nothing.</summary>
internal enum AddressFault
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>It is no address of the web.</summary>
    NotAnAddress,
    /// <summary>It carries a name or a password.</summary>
    NamesSomebody,
    /// <summary>It leads to another machine in the open.</summary>
    InTheOpen,
}

/// <summary>Where requests may go: https, or http on this machine, without name and password.</summary>
internal static class WebhookAddress
{
    public static AddressFault Judge(string text, out Uri? address)
    {
        if (!Uri.TryCreate(text, UriKind.Absolute, out address) || address.Scheme is not ("http" or "https")) return AddressFault.NotAnAddress;
        if (address.UserInfo.Length > 0) return AddressFault.NamesSomebody;
        return address.Scheme == "http" && !address.IsLoopback ? AddressFault.InTheOpen : AddressFault.None;
    }
}
