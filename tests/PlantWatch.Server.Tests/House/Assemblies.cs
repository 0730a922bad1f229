using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace PlantWatch.Server.Tests.House;

/// <summary>What a compiled assembly refers to: the truth about its dependencies, whatever the source looks like.</summary>
internal static class Assemblies
{
    public static IReadOnlyList<string> ReferencesOf(string path) => Read(path, metadata =>
        metadata.AssemblyReferences.Select(h => metadata.GetString(metadata.GetAssemblyReference(h).Name)).Order(StringComparer.Ordinal).ToList());

    /// <summary>Full names of the types of other assemblies that it mentions.</summary>
    public static IReadOnlyList<string> TypesUsedBy(string path) => Read(path, metadata =>
        metadata.TypeReferences.Select(h => NameOf(metadata, h)).Distinct().Order(StringComparer.Ordinal).ToList());

    /// <summary>Members of other assemblies that it calls, as Type.Member.</summary>
    public static IReadOnlyList<string> MembersUsedBy(string path) => Read(path, metadata => metadata.MemberReferences
        .Select(metadata.GetMemberReference)
        .Where(m => m.Parent.Kind == HandleKind.TypeReference)
        .Select(m => NameOf(metadata, (TypeReferenceHandle)m.Parent) + "." + metadata.GetString(m.Name))
        .Distinct().Order(StringComparer.Ordinal).ToList());

    private static string NameOf(MetadataReader metadata, TypeReferenceHandle handle)
    {
        var type = metadata.GetTypeReference(handle);
        var name = metadata.GetString(type.Name);
        if (type.ResolutionScope.Kind == HandleKind.TypeReference) return NameOf(metadata, (TypeReferenceHandle)type.ResolutionScope) + "." + name;
        return metadata.GetString(type.Namespace) + "." + name;
    }

    private static T Read<T>(string path, Func<MetadataReader, T> read)
    {
        using var file = File.OpenRead(path);
        using var assembly = new PEReader(file);
        return read(assembly.GetMetadataReader());
    }
}
