using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.LimitPacks;

/// <summary>Reads one limit pack: YAML, then the schema, then what a schema cannot say. Tells everything that is wrong at once, and never throws.</summary>
internal static class PackFile
{
    private static readonly SchemaCheck Schema = new(SchemaCheck.EmbeddedText("pack.schema.json"));

    /// <summary>The pack, or null and what is wrong.</summary>
    public static LimitPack? Read(string yaml, out IReadOnlyList<PlantFileError> errors)
    {
        var complaints = new Complaints();
        if (YamlTree.Read(yaml, complaints) is { } root)
        {
            Schema.Check(root, complaints);
            Rows(Place.Root(root)["rows"], complaints);
            if (!complaints.Any)
            {
                errors = [];
                return Pack(Place.Root(root));
            }
        }

        errors = complaints.InOrder();
        return null;
    }

    /// <summary>No pack: the file is no text.</summary>
    public static LimitPack? Unreadable(out IReadOnlyList<PlantFileError> errors)
    {
        errors = [new(1, "", "expected text in UTF-8 of at most 1 MiB")];
        return null;
    }

    private static void Rows(Place rows, Complaints complaints)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in rows.Items)
        {
            if (row["id"].String is { } id && !known.Add(id)) complaints.Add(row["id"], $"the row '{id}' stands here twice");
            var (low, high, raises) = (row["low"].Number, row["high"].Number, row["raises_low_by"].Number);
            var limits = low is not null || high is not null || raises is not null;
            if (row["quantity"].String == "sentence" && limits) complaints.Add(row, "a sentence has no figures that compute");
            if (row["quantity"].String is { } quantity && quantity is not ("sentence" or "clarity") && !limits) complaints.Add(row, "expected low, high or raises_low_by; a row with none limits nothing");
            if (low > high) complaints.Add(row, "expected low at or below high");
            if (raises is not null && (low is not null || high is not null)) complaints.Add(row, "a row raises others or limits by itself, not both");
        }
    }

    private static LimitPack Pack(Place at) => new(at["id"].String!, at["authority"].String!, at["edition"].String!, [.. at["rows"].Items.Select(Row)])
    {
        Superseded = at["superseded"].Boolean ?? false,
    };

    private static PackRow Row(Place at) => new()
    {
        Id = at["id"].String!,
        Quantity = EnumWords<PackQuantity>.Find(at["quantity"].String)!.Value,
        Grade = EnumWords<RowGrade>.Find(at["grade"].String) ?? RowGrade.Operating,
        When = at["when"].Exists ? When(at["when"]) : PackCondition.Always,
        Low = at["low"].Number,
        High = at["high"].Number,
        RaisesLowBy = at["raises_low_by"].Number,
        MustBeMeasured = at["must_be_measured"].Boolean ?? false,
        Says = at["says"].String!,
        Source = at["source"].String!,
        Provenance = EnumWords<RowProvenance>.Find(at["provenance"].String)!.Value,
        Certainty = at["certainty"].String,
    };

    private static PackCondition When(Place at) => new()
    {
        Kinds = Words<PoolKind>(at["kinds"]),
        NotKinds = Words<PoolKind>(at["not_kinds"]),
        Setting = EnumWords<Setting>.Find(at["setting"].String),
        Disinfectants = Words<Disinfectant>(at["disinfectants"]),
        Secondary = EnumWords<SecondaryTreatment>.Find(at["secondary"].String),
        CyanurateUsed = at["cyanurate_used"].Boolean,
        CyanurateFrom = at["cyanurate_from"].Number,
        CyanurateBelow = at["cyanurate_below"].Number,
        PhAbove = at["ph_above"].Number,
        PhUpTo = at["ph_up_to"].Number,
        TemperatureAbove = at["temperature_above"].Number,
        TemperatureUpTo = at["temperature_up_to"].Number,
        ReferenceElectrode = at["reference_electrode"].String,
        ToJudge = at["to_judge"].String,
    };

    private static ImmutableArray<T> Words<T>(Place list) where T : struct, Enum => [.. list.Items.Select(item => EnumWords<T>.Find(item.String)).OfType<T>()];
}
