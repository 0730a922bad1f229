namespace PlantWatch.Server.Paper.Model;

/// <summary>The kinds of sheet.</summary>
internal enum SheetKind
{
    /// <summary>Not stated.</summary>
    None = 0,
    /// <summary>A day, hour by hour.</summary>
    DayLog,
    /// <summary>A month, a line a day.</summary>
    Month,
    /// <summary>What was done on the probes, and what their record is worth.</summary>
    Calibration,
    /// <summary>Alarms, exceptions and maintenance.</summary>
    AlarmsAndJobs,
    /// <summary>What an inspector asks for.</summary>
    Inspection,
}

/// <summary>Kinds as they stand in addresses and in the plant file.</summary>
internal static class SheetKinds
{
    /// <summary>Every kind, in the order in which they are offered.</summary>
    public static IReadOnlyList<(SheetKind Kind, string Key)> All { get; } =
    [
        (SheetKind.DayLog, "day-log"), (SheetKind.Month, "month"), (SheetKind.Calibration, "calibration"), (SheetKind.AlarmsAndJobs, "alarms-and-jobs"), (SheetKind.Inspection, "inspection"),
    ];

    /// <summary>The kind of a key; none for a key of no kind.</summary>
    public static SheetKind Find(string? key) => All.FirstOrDefault(k => k.Key == key).Kind;

    /// <summary>The key of a kind.</summary>
    public static string Key(this SheetKind kind) => All.First(k => k.Kind == kind).Key;
}
