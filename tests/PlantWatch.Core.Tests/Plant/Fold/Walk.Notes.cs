using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

internal static partial class Walk
{
    // Notes right and wrong, corrected, taken back, sent twice, and one id for two of them.
    private static NoteWritten Note(Instant at, Act act) => new(at, new SpanNote(
        TimeOrderedId.Derive(Hall.Nine, $"note {act.B % 7}"), act.A % 8 == 0 ? "nowhere" : "main", at - TimeSpan.FromMinutes(act.A), at - TimeSpan.FromMinutes((act.B % 60) - 10),
        act.A % 13 == 0 ? " " : "school party", act.B % 11 == 0 ? "" : "R. Example")
    {
        Corrects = act.A % 3 == 0 ? TimeOrderedId.Derive(Hall.Nine, $"note {act.A % 7}") : null,
        Why = act.A % 5 == 0 ? null : "the other half of the hour",
        Retracted = act.A % 6 == 0,
    });
}
