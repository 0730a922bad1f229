namespace PlantWatch.Core.Probes;

/// <summary>One witness to the water: what it says is (PerPh x pH) + (PerDecade x log10 of free chlorine) give or take an uncertainty.</summary>
/// <param name="Part">Who.</param>
/// <param name="Says">What it says, its constant taken off.</param>
/// <param name="PerPh">How it moves with pH.</param>
/// <param name="PerDecade">How it moves with a decade of free chlorine.</param>
/// <param name="Sound">Standard uncertainty while it is sound.</param>
/// <param name="Off">What it may be off by, as a standard deviation, when it is not.</param>
internal readonly record struct Witness(StoryPart Part, double Says, double PerPh, double PerDecade, double Sound, double Off)
{
    public double Variance(bool isOff) => (Sound * Sound) + (isOff ? Off * Off : 0);
}

/// <summary>What a set of witnesses makes of the water, were just these of them wrong.</summary>
/// <param name="LogEvidence">Logarithm of how likely all that was said is then.</param>
/// <param name="Ph">pH then.</param>
/// <param name="LogChlorine">log10 of free chlorine, mg/L as Cl2, then.</param>
internal readonly record struct Hearing(double LogEvidence, double Ph, double LogChlorine)
{
    // Where public pools are kept (common practice), so wide that two witnesses outweigh it: pH 7.4 +- 0.5, chlorine 1.5 mg/L and a factor of three.
    private const double UsualPh = 7.4;
    private const double UsualPhSd = 0.5;
    private const double UsualLog = 0.18;
    private const double UsualLogSd = 0.5;

    /// <summary>Hears all, with the witnesses whose bit is set taken for wrong. Linear and Gaussian, so the answer is exact.</summary>
    public static Hearing Of(ReadOnlySpan<Witness> witnesses, int wrong)
    {
        var (pp, pl, ll) = (1 / (UsualPhSd * UsualPhSd), 0.0, 1 / (UsualLogSd * UsualLogSd));
        var (bp, bl, square, log) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < witnesses.Length; i++)
        {
            var w = witnesses[i];
            var variance = w.Variance((wrong & (1 << i)) != 0);
            var said = w.Says - (w.PerPh * UsualPh) - (w.PerDecade * UsualLog);
            pp += w.PerPh * w.PerPh / variance;
            pl += w.PerPh * w.PerDecade / variance;
            ll += w.PerDecade * w.PerDecade / variance;
            bp += w.PerPh * said / variance;
            bl += w.PerDecade * said / variance;
            square += said * said / variance;
            log += Math.Log(variance);
        }

        var determinant = (pp * ll) - (pl * pl);
        var (ph, chlorine) = (((ll * bp) - (pl * bl)) / determinant, ((pp * bl) - (pl * bp)) / determinant);
        var misfit = square - (bp * ph) - (bl * chlorine);
        return new(-0.5 * (log + Math.Log(determinant) + misfit), UsualPh + ph, UsualLog + chlorine);
    }
}
