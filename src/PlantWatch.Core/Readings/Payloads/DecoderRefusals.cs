namespace PlantWatch.Core.Readings.Payloads;

/// <summary>What each decoder can refuse a payload or a record for: closed lists, each reason with a test, and nothing else ever comes out, as the fuzz campaign sees.</summary>
/// <remarks>Where a sample belongs, its probe, unit and range, is judged after decoding and has reasons of its own.</remarks>
public static class DecoderRefusals
{
    /// <summary>Of <see cref="Payloads.PlainNumber"/>.</summary>
    public static IReadOnlyList<RefusalReason> PlainNumber { get; } =
        [RefusalReason.Empty, RefusalReason.TooLarge, RefusalReason.InvalidUtf8, RefusalReason.NotANumber, RefusalReason.NotFinite];

    /// <summary>Of <see cref="Payloads.PumpStateWords"/>.</summary>
    public static IReadOnlyList<RefusalReason> PumpState { get; } =
        [RefusalReason.Empty, RefusalReason.TooLarge, RefusalReason.InvalidUtf8, RefusalReason.UnknownState];

    /// <summary>Of <see cref="Payloads.SenmlJson"/>.</summary>
    public static IReadOnlyList<RefusalReason> SenmlJson { get; } =
    [
        RefusalReason.Empty, RefusalReason.TooLarge, RefusalReason.InvalidUtf8, RefusalReason.NotFinite, RefusalReason.ClockAhead, RefusalReason.ClockBehind,
        RefusalReason.MalformedSenml, RefusalReason.UnsupportedSenml, RefusalReason.SenmlWithoutNumber, RefusalReason.InvalidName, RefusalReason.WrongUnit,
    ];

    /// <summary>Of <see cref="Payloads.SenmlCbor"/>: the same, for it is the same pack.</summary>
    public static IReadOnlyList<RefusalReason> SenmlCbor => SenmlJson;
}
