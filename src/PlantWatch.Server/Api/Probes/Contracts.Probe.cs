using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Answering;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/probes/{id} : ProbeHistory

/// <summary>A probe with its past.</summary>
/// <param name="Info">Its fixed facts.</param>
/// <param name="Now">How it stands.</param>
/// <param name="Answer">Whom to believe, and what to do next.</param>
/// <param name="Judgements">What the newest checks said of it, newest first; the older ones by <see cref="JudgementPage"/>.</param>
/// <param name="Older">Where the next page begins; null when these are all.</param>
/// <param name="Calibrations">All calibrations, newest first.</param>
/// <param name="Offer">What PlantWatch would propose; null when nothing.</param>
/// <param name="Advice">Why there is an offer, or why there is none.</param>
public sealed record ProbeHistory(
    ProbeInfo Info, ProbeView Now, ProbeAnswerView Answer, IReadOnlyList<JudgementView> Judgements, Instant? Older, IReadOnlyList<CalibrationView> Calibrations,
    OfferedCalibration? Offer, IReadOnlyList<Said> Advice)
{
    /// <summary>The bias after each check that gave one, oldest first; of the newest some hundreds.</summary>
    public IReadOnlyList<BiasPoint> Bias { get; init; } = [];

    /// <summary>Where it is heading; null while there is no bias.</summary>
    public BiasAheadView? Ahead { get; init; }

    /// <summary>The lines the bias is held against; null when no test by hand judges such a probe.</summary>
    public TrustLimits? Limits { get; init; }

    /// <summary>What its own line has learned; null when it needs none.</summary>
    public LearnedView? Learned { get; init; }

    /// <summary>How far probe and tests agree; null with fewer than three tests to compare.</summary>
    public AgreementView? Agreement { get; init; }

    /// <summary>What the signal alone says.</summary>
    public required SignalView Signal { get; init; }

    /// <summary>Sensitivity of a pH probe as a share of what it should be, 1 = 100 %; null when not known.</summary>
    public WithU? Slope { get; init; }

    /// <summary>What the newest tests read more than they should, while a bad lot or instrument is believed; null otherwise.</summary>
    public WithU? TestOff { get; init; }

    /// <summary>Checks on the curve that are doubted as things stand now.</summary>
    public IReadOnlyList<Guid> Doubted { get; init; } = [];

    /// <summary>Checks on the curve that are taken in as things stand now, whatever was said of them at first.</summary>
    public IReadOnlyList<Guid> TakenIn { get; init; } = [];

    /// <summary>The flow switch of its sample cell; null when it has none.</summary>
    public string? FlowSwitchId { get; init; }
}

/// <summary>Whom to believe and what to do next.</summary>
/// <param name="Whom">Whom to believe.</param>
/// <param name="Sentence">The same in one sentence.</param>
/// <param name="Steps">What to do, first step first.</param>
public sealed record ProbeAnswerView(Believe Whom, Said Sentence, IReadOnlyList<AdvisedStepView> Steps);

/// <summary>A step.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Text">In words.</param>
public sealed record AdvisedStepView(NextStep Kind, string Text);

/// <summary>The bias after a check: what the probe read less what it should.</summary>
/// <param name="CheckId">The check.</param>
/// <param name="At">Sample time.</param>
/// <param name="Value">Bias in the measurand's unit.</param>
/// <param name="U">Expanded uncertainty, k = 2.</param>
/// <param name="Doubted">The check is set aside and did not move it.</param>
public sealed record BiasPoint(Guid CheckId, Instant At, double Value, double U, bool Doubted);

/// <summary>The bias to come.</summary>
/// <param name="Points">Drawn on from now; the check of each is empty.</param>
/// <param name="Drift">How it moves, unit a day; null when no rate is told.</param>
/// <param name="Earliest">The limit of maintenance may be reached from here on; null when not in sight.</param>
/// <param name="Likely">It is likely reached; null when not in sight.</param>
/// <param name="Latest">It is reached by now even at its slowest; null when not in sight.</param>
/// <param name="Why">What the forecast rests on.</param>
public sealed record BiasAheadView(IReadOnlyList<BiasPoint> Points, WithU? Drift, Instant? Earliest, Instant? Likely, Instant? Latest, Said Why);

/// <summary>What the line of an ORP probe has learned.</summary>
/// <param name="Checks">Checks it rests on since it began.</param>
/// <param name="Needed">Checks it needs before anything is judged by it.</param>
/// <param name="Days">Days these checks are spread over.</param>
/// <param name="DaysNeeded">Days they have to be spread over.</param>
/// <param name="Since">When it began anew after work on the probe; null when it never did.</param>
/// <param name="At">Hypochlorous acid at which the level is given, mg/L as Cl2; null while it learns.</param>
/// <param name="Level">mV there.</param>
/// <param name="Slope">mV for ten times the hypochlorous acid.</param>
public sealed record LearnedView(int Checks, int Needed, double Days, double DaysNeeded, Instant? Since, double? At, WithU? Level, WithU? Slope);

/// <summary>How far a probe agreed with the tests, after Bland and Altman (1986).</summary>
/// <param name="Count">Tests compared; doubted ones are left out.</param>
/// <param name="Bias">Mean difference, probe less test.</param>
/// <param name="Low">Lower limit of agreement, 1.96 standard deviations from the bias.</param>
/// <param name="High">Upper limit.</param>
public sealed record AgreementView(int Count, double Bias, double Low, double High);

/// <summary>What a signal says by itself, without any test.</summary>
/// <param name="Standing">Standing by the signal alone.</param>
/// <param name="Reasons">Why, in sentences.</param>
/// <param name="Response">Apparent time constant of a probe that has become slow, minutes; null while healthy or not known.</param>
/// <param name="Wanders">How far it usually wanders within two hours, in the measurand's unit; null before that is known.</param>
/// <param name="Spikes">Spikes of late; a count that halves in half an hour.</param>
/// <param name="SameSince">Since when the value has not moved.</param>
/// <param name="LeaptAt">When it last leapt; null when never.</param>
/// <param name="LeaptBy">By how much, signed.</param>
/// <param name="NoFlowAt">When the cell last had no flow; null when never seen.</param>
/// <param name="LagSeconds">Receive time less device time, s; 0 without device time.</param>
public sealed record SignalView(
    Standing Standing, IReadOnlyList<Said> Reasons, WithU? Response, double? Wanders, double Spikes, Instant? SameSince, Instant? LeaptAt, double? LeaptBy,
    Instant? NoFlowAt, double LagSeconds);

// ---- GET /api/v1/probes/{id}/judgements?before=&limit= : JudgementPage, newest first

/// <summary>Some judgements of a probe, newest first.</summary>
/// <param name="Judgements">What the checks said.</param>
/// <param name="Older">Where the next page begins; null on the last.</param>
public sealed record JudgementPage(IReadOnlyList<JudgementView> Judgements, Instant? Older);
