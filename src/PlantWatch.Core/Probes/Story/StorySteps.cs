using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Probes;

/// <summary>What to do next: every step that fits, by how much it would settle or mend a minute.</summary>
internal sealed class StorySteps
{
    private const int Most = 5;

    // Nobody calibrates or replaces on a guess.
    private const double SureEnoughToTurn = 0.85;
    // Nil by DPD: an empty pool, or one so full that the dye is bleached.
    internal const double Nil = 0.1;

    // Above this the scale ends, and the dye may (ISO 7393-2:2017, scope).
    private const double MostInCell = 5;

    private const double WorthAsking = 0.03;

    // How sure a slow response is once it was found over quarter days.
    private const double KnownSlow = 0.95;

    private const double AfterFlow = 1e6;

    private readonly StoryInput _input;
    private readonly StoryAnswer _answer;
    private readonly Func<StoryPart, double> _wrong;
    private readonly List<(double Worth, StoryStep Step)> _steps = [];

    private StorySteps(StoryInput input, StoryAnswer answer, Func<StoryPart, double> wrong) => (_input, _answer, _wrong) = (input, answer, wrong);

    public static ImmutableArray<StoryStep> For(StoryInput input, StoryAnswer answer, Func<StoryPart, double> wrong)
    {
        var steps = new StorySteps(input, answer, wrong);
        steps.OfFlow();
        steps.OfLot();
        steps.OfSlow(StoryAct.Clean);
        if (answer == StoryAnswer.WaterChanged) steps.OfWater();
        if (answer is not (StoryAnswer.AllAgree or StoryAnswer.WaterChanged)) steps.OfDoubt();
        steps.OfSlow(StoryAct.Replace);
        foreach (var probe in input.Probes)
            if (PanelStory.Of(probe) is not null) steps.Add(StoryAct.CheckScaling, StorySigns.PartOf(probe), probe, 0.5);
        return [.. steps._steps.OrderByDescending(s => s.Worth).Select(s => s.Step).Take(Most)];
    }

    private void OfFlow()
    {
        foreach (var probe in _input.Probes)
            if (probe.Signal.Standing == Standing.CheckFunction && !PassesByItself(probe.Signal) && _steps.Count == 0) Add(StoryAct.RestoreFlow, StorySigns.PartOf(probe), probe, 1);
    }

    // Flow that is back, and a person at the probe, need nothing but time.
    private static bool PassesByItself(SignalHealth signal) => signal.Reasons is [{ Code: "signal.flushing" or "signal.worked_on" }, ..];

    // A repeat with the lot that is in doubt would say the same again.
    private void OfLot()
    {
        if (_input.LotOff(Measurand.Ph) is not { } lot) return;
        Add(StoryAct.OtherLot, StoryPart.PhTest, lot.Probe, Asked(StoryPart.PhTest), _wrong(StoryPart.PhTest), isFirst: true);
    }

    // That it is slow is known without any quarrel; cleaning comes before replacing.
    private void OfSlow(StoryAct act)
    {
        foreach (var probe in _input.Probes)
            if (probe.Signal.Response.IsKnown && StorySigns.PartOf(probe) is not StoryPart.None and var part) Add(act, part, probe, _wrong(part), KnownSlow);
    }

    private void OfWater()
    {
        Add(StoryAct.LookAtPump, StoryPart.None, null, 1);
        var tested = _input.Probe(Measurand.Ph) is null ? StoryPart.ChlorineTest : StoryPart.PhTest;
        if (_input.Tests.Any(t => t.Suspect)) Add(StoryAct.RepeatTest, tested, null, 0.2);
    }

    private void OfDoubt()
    {
        foreach (var test in _input.Tests) OfTest(test, StorySigns.PartOf(test.Result.Measurand));
        foreach (var probe in _input.Probes) OfProbe(probe, StorySigns.PartOf(probe));
        if (_input.Tests.IsEmpty) Add(StoryAct.RepeatTest, _input.Probe(Measurand.Ph) is null ? StoryPart.ChlorineTest : StoryPart.PhTest, null, 0.5);
        if (StoryBench.IsUnmixed(_input)) Add(StoryAct.WaitForMixing, StoryPart.None, null, 0.5);
    }

    private void OfTest(StoryTest test, StoryPart part)
    {
        if (part == StoryPart.None || Quarrel(part) < WorthAsking) return;
        var mayBleach = part == StoryPart.ChlorineTest && (_input.IncidentOpen || test.Result.Value <= Nil || test.Result.Value > MostInCell || test.Result.Look == CellLook.PinkFlash) && test.Result.Dilution <= 1;
        // A repeat tells of the probe as well as of the test: it is asked of whichever is less certain.
        if (part == StoryPart.PhTest && _input.LotOff(Measurand.Ph) is not null) return;
        Add(mayBleach ? StoryAct.Dilute : StoryAct.RepeatTest, part, null, Asked(part), _wrong(part));
        if (!mayBleach) Add(StoryAct.OtherLot, part, null, Asked(part), _wrong(part));
    }

    private void OfProbe(StoryProbe probe, StoryPart part)
    {
        var wrong = _wrong(part);
        if (part == StoryPart.None || wrong < WorthAsking) return;
        if (probe.Signal.Standing is Standing.Failure or Standing.OutOfSpecification or Standing.MaintenanceRequired && !probe.IsOnlySlow) Add(StoryAct.LookAtSignal, part, probe, wrong);
        if (probe is { Plan.Origin: SignalOrigin.PanelScaled, Panel: null }) Add(StoryAct.ReadPanel, part, probe, wrong);
        var isSlow = probe.Signal.Response.IsKnown;
        if (!isSlow) Add(StoryAct.Clean, part, probe, wrong);
        Add(part == StoryPart.PhProbe ? StoryAct.CheckInBuffer : part == StoryPart.OrpProbe ? StoryAct.CheckInSolution : StoryAct.CheckCell, part, probe, wrong);
        if (wrong >= SureEnoughToTurn && !isSlow) Turn(probe, part, wrong);
    }

    private void Turn(StoryProbe probe, StoryPart part, double wrong)
    {
        // An ORP probe has nothing worth calibrating, and broken glass none that helps.
        if (probe.Signal.Standing == Standing.Failure || part == StoryPart.OrpProbe) Add(StoryAct.Replace, part, probe, wrong);
        else Add(StoryAct.Calibrate, part, probe, wrong);
    }

    private double Quarrel(StoryPart test) => Math.Max(_wrong(test), Against(test));

    // Of the two that stand against each other, the one that is nearer to even: there the answer is worth most.
    private double Asked(StoryPart test) => Math.Abs(_wrong(test) - 0.5) <= Math.Abs(Against(test) - 0.5) ? _wrong(test) : Against(test);

    private double Against(StoryPart test) => test == StoryPart.PhTest ? _wrong(StoryPart.PhProbe) : Math.Max(_wrong(StoryPart.ChlorineProbe), _wrong(StoryPart.OrpProbe));

    private void Add(StoryAct act, StoryPart part, StoryProbe? probe, double wrong) => Add(act, part, probe, wrong, wrong);

    private void Add(StoryAct act, StoryPart part, StoryProbe? probe, double asked, double wrong, bool isFirst = false)
    {
        var figures = StepFigures.Of(act);
        var what = StepWords.Of(act, _input, part, probe);
        // What keeps everybody from comparing comes before any weighing.
        var worth = act is StoryAct.RestoreFlow or StoryAct.WaitForMixing && _answer is not StoryAnswer.ProbeDrifts ? double.MaxValue : isFirst ? AfterFlow : figures.Worth(asked, wrong);
        // A dirty probe is not calibrated: turning comes after whatever else was found to do at it.
        if (act is StoryAct.Calibrate or StoryAct.Replace)
            worth = Math.Min(worth, 0.99 * _steps.Where(s => s.Step.ProbeId == probe?.Plan.Id && s.Step.ProbeId is not null).Select(s => s.Worth).DefaultIfEmpty(worth).Min());
        _steps.Add((worth, new(act, part, part.IsTest() ? null : probe?.Plan.Id, figures.Minutes, figures.Settles(asked), what)));
    }
}
