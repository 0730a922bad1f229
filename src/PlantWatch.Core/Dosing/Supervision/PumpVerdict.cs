using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>A trouble of a pump that begins or ends.</summary>
/// <param name="At">When it is said.</param>
/// <param name="Pump">Of which pump.</param>
/// <param name="Trouble">What.</param>
/// <param name="Raised">True when it begins, false when it is over.</param>
/// <param name="Evidence">What speaks for it; null where the sample speaks for itself.</param>
public sealed record PumpVerdict(Instant At, DosedProduct Pump, PumpTrouble Trouble, bool Raised, PumpEvidence? Evidence = null);

/// <summary>What speaks for a trouble.</summary>
/// <param name="Since">From when it seems to hold.</param>
/// <param name="Strokes">Strokes since then.</param>
/// <param name="LitresMissing">Litres of product that they should have brought and did not; negative where product came unasked.</param>
/// <param name="Expected">By how much the value should have moved since then, had all been well: pH, or mg/L of free chlorine.</param>
/// <param name="Observed">By how much it moved, as far as it shows.</param>
/// <param name="Certainty">How likely the trouble is, from 0 to 1, beside the account that all is well.</param>
public sealed record PumpEvidence(Instant Since, double Strokes, double LitresMissing, double Expected, double Observed, double Certainty);
