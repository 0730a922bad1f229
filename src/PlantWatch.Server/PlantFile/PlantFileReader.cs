using System.Text;
using PlantWatch.Server.LimitPacks;

namespace PlantWatch.Server.PlantFile;

/// <summary>Reads a plant file: YAML, then the schema, then what a schema cannot say. Tells everything that is wrong at once, and never throws.</summary>
internal static class PlantFileReader
{
    /// <summary>A plant of a thousand probes fits many times over.</summary>
    public const int LargestBytes = 1024 * 1024;

    public static PlantFileResult Read(string yaml) => Read(yaml, PackShelf.Shipped);

    /// <summary>The same where the plant has limit packs of its own.</summary>
    public static PlantFileResult Read(string yaml, PackShelf packs)
    {
        var complaints = new Complaints();
        if (Encoding.UTF8.GetByteCount(yaml) > LargestBytes)
        {
            complaints.Add(1, "", "the file is larger than 1 MiB; expected a description of one plant");
            return new(null, complaints.InOrder());
        }
        return YamlTree.Read(yaml, complaints) is { } root ? Understand(root, packs, complaints) : new(null, complaints.InOrder());
    }

    /// <summary>The same from a tree, with what was wrong with it already.</summary>
    public static PlantFileResult Understand(PlantNode root, PackShelf packs, Complaints complaints)
    {
        SchemaCheck.OfPlantFile.Check(root, complaints);
        CheckSense(Place.Root(root), packs, complaints);
        return complaints.Any
            ? new(null, complaints.InOrder())
            : new(new PlantPlanBuilder(Place.Root(root), packs).Build(), []) { Packs = packs };
    }

    // Each check passes over what the schema has complained of already.
    private static void CheckSense(Place root, PackShelf packs, Complaints complaints)
    {
        SiteChecks.Check(root, complaints);
        IdChecks.Check(root, complaints);
        ReferenceChecks.Check(root, packs, complaints);
        ProductChecks.Check(root, complaints);
        PumpChecks.Check(root, complaints);
        ProbeChecks.Check(root, complaints);
        LimitChecks.Check(root, complaints);
        StopChecks.Check(root, complaints);
        TopicChecks.Check(root, complaints);
        ChannelChecks.Check(root, complaints);
        DutyChecks.Check(root, complaints);
    }
}
