namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What is known of a tank's content by one account of its pump, in litres.</summary>
internal struct TankBelief
{
    // A level sensor's step and noise (common practice: half a litre), and how far a stroke may be from its rated volume.
    public const double Noise = 0.09;
    private const double StrokeDoubt = 0.15;

    public double Litres, Variance;

    public void Keep(Tape tape) => (Litres, Variance) = (tape.Next(Litres), tape.Next(Variance));

    /// <summary>So much was drawn by this account.</summary>
    public void Draw(double litres)
    {
        Litres -= litres;
        Variance += (StrokeDoubt * litres * StrokeDoubt * litres) + 1e-5;
    }

    /// <summary>A level was heard; returns its log likelihood.</summary>
    public double See(double litres)
    {
        var s = Variance + Noise;
        var d = litres - Litres;
        Litres += Variance / s * d;
        Variance *= Noise / s;
        return -0.5 * (Math.Log(2 * Math.PI * s) + Math.Min(d * d / s, 16));
    }
}
