using PlantWatch.Core.Probes;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>
/// What is known of a dosed value and what drives it: the value (V), how far today's demand is from the usual (Z, in standard deviations), and what the redox probe shows beside the water (W), with their covariance.
/// A Kalman filter, scalar updates one after the other.
/// </summary>
internal struct LoopBelief
{
    public double V, Z, W;
    public double Vv, Vz, Vw, Zz, Zw, Ww;

    /// <summary>Nothing known but a first value.</summary>
    public static LoopBelief At(double value, double sd) => new() { V = value, Vv = sd * sd, Zz = 1, Ww = 1e6 };

    public void Keep(Tape tape)
    {
        (V, Z, W) = (tape.Next(V), tape.Next(Z), tape.Next(W));
        (Vv, Vz, Vw, Zz, Zw, Ww) = (tape.Next(Vv), tape.Next(Vz), tape.Next(Vw), tape.Next(Zz), tape.Next(Zw), tape.Next(Ww));
    }

    /// <summary>Lets time pass.</summary>
    /// <param name="fall">How much a stroke lowers the value.</param>
    /// <param name="demand">Usual demand over the span, in strokes.</param>
    /// <param name="spread">Standard deviation of that, in strokes.</param>
    /// <param name="strokes">What was delivered, in strokes.</param>
    /// <param name="wander">Variance that the value gains.</param>
    /// <param name="drift">Variance that the redox probe gains.</param>
    /// <param name="keeps">Part of Z that stays.</param>
    public void Advance(double fall, double demand, double spread, double strokes, double wander, double drift, double keeps)
    {
        var h = fall * spread;
        V += (fall * (demand - strokes)) + (h * Z);
        Vv += (2 * h * Vz) + (h * h * Zz) + wander;
        Vz = keeps * (Vz + (h * Zz));
        Vw += h * Zw;
        Zz = (keeps * keeps * Zz) + 1 - (keeps * keeps);
        Zw *= keeps;
        Ww += drift;
        Z *= keeps;
    }

    /// <summary>Takes a sight in: innovation, how V and W enter, its variance. Returns the log likelihood, tails cut so that one wild sample decides nothing.</summary>
    public double See(double innovation, double hv, double hw, double variance)
    {
        var (a, b, c) = ((hv * Vv) + (hw * Vw), (hv * Vz) + (hw * Zw), (hv * Vw) + (hw * Ww));
        var s = (hv * a) + (hw * c) + variance;
        var (kv, kz, kw) = (a / s, b / s, c / s);
        V += kv * innovation;
        Z += kz * innovation;
        W += kw * innovation;
        (Vv, Vz, Vw) = (Vv - (kv * a), Vz - (kv * b), Vw - (kv * c));
        (Zz, Zw, Ww) = (Zz - (kz * b), Zw - (kz * c), Ww - (kw * c));
        return -0.5 * (Math.Log(2 * Math.PI * s) + Math.Min(innovation * innovation / s, 20));
    }

    /// <summary>Log likelihood that the value is not above a bound, and what follows from it.</summary>
    public double SeeBelow(double bound, double variance) => Censored(bound - V, variance, 1);

    /// <summary>The same for not below.</summary>
    public double SeeAbove(double bound, double variance) => Censored(V - bound, variance, -1);

    // Moments of the cut normal distribution.
    private double Censored(double room, double variance, int side)
    {
        var sd = Math.Sqrt(Vv + variance);
        var z = Math.Max(room / sd, -6);
        var inside = Math.Max(Normal.Above(-z), 1e-9);
        var ratio = Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI) / inside;
        var (shift, shrink) = (-side * ratio / sd, ratio * (ratio + z) / (sd * sd));
        var (v, vz, vw) = (Vv, Vz, Vw);
        V += v * shift;
        Z += vz * shift;
        W += vw * shift;
        Vv -= v * v * shrink;
        Vz -= v * vz * shrink;
        Vw -= v * vw * shrink;
        Zz -= vz * vz * shrink;
        Zw -= vz * vw * shrink;
        Ww -= vw * vw * shrink;
        return Math.Log(inside);
    }
}
