using System.Collections.Frozen;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Rules;

/// <summary>The rules in force, by number. docs/rules.md says each in a sentence; a test fails while one lacks its sentence or its evidence.</summary>
/// <remarks>
/// Delays are starting points after the habit of control rooms (pH and ORP 120 s, flow 15 s; common practice), to be tuned on a
/// plant's own noise. A stop has no on-delay beyond a sample or two: it is about people, and
/// for the same reason a cell that loses its flow does not take it back: nothing new is judged, but what stood stands.
/// </remarks>
public static partial class RuleBook
{
    private static readonly TimeSpan None = TimeSpan.Zero;
    private static readonly TimeSpan FiveSeconds = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Brief = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Minute = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan TwoMinutes = TimeSpan.FromSeconds(120);

    // Without water nothing is measured. Probes that see standing or rinsing water say nothing of the pool.
    private const SuppressedWhile Dry = SuppressedWhile.Drained;
    private const SuppressedWhile Unseen = SuppressedWhile.NoSampleFlow | SuppressedWhile.Drained | SuppressedWhile.Backwash;

    /// <summary>pH where it harms skin and eyes or stops the disinfectant from working.</summary>
    public static Rule StopPh { get; } = new("R-001", Priority.Critical, Brief, Minute, Dry, ClearsByReading: true, Latches: true);

    /// <summary>Free chlorine where it no longer protects, or harms.</summary>
    public static Rule StopFreeChlorine { get; } = new("R-002", Priority.Critical, Brief, Minute, Dry, ClearsByReading: true, Latches: true);

    /// <summary>Water too hot for people.</summary>
    public static Rule StopTemperature { get; } = new("R-003", Priority.Critical, Brief, Minute, Dry, ClearsByReading: true, Latches: true);

    /// <summary>The bottom cannot be seen.</summary>
    public static Rule StopBottom { get; } = new("R-004", Priority.Critical, None, None, Dry);

    // A hold lasts for hours and its page has a clock: once a shift is enough.
    /// <summary>A contamination incident is open in water that the pool shares.</summary>
    public static Rule IncidentOpen { get; } = new("R-005", Priority.Critical, None, None) { ReAlarmAfter = TimeSpan.FromHours(8) };

    /// <summary>A live value outside a closure limit that the plant has confirmed.</summary>
    public static Rule OutsideClosure { get; } = new("R-006", Priority.Critical, Brief, Minute, Dry, ClearsByReading: true, Latches: true);

    /// <summary>A manual test outside a closure limit that the plant has confirmed.</summary>
    public static Rule TestOutsideClosure { get; } = new("R-007", Priority.Critical, None, None, Dry);

    /// <summary>A probe below its pool's low limit.</summary>
    public static Rule BelowLimit { get; } = new("R-010", Priority.Medium, TwoMinutes, TwoMinutes, Unseen, ClearsByReading: true);

    /// <summary>A probe above its pool's high limit.</summary>
    public static Rule AboveLimit { get; } = new("R-011", Priority.Medium, TwoMinutes, TwoMinutes, Unseen, ClearsByReading: true);

    /// <summary>A manual test outside its pool's limits.</summary>
    public static Rule TestOutsideLimit { get; } = new("R-012", Priority.Medium, None, None, Dry);

    /// <summary>A manual test outside a stop that always holds.</summary>
    public static Rule TestOutsideStop { get; } = new("R-013", Priority.Critical, None, None, Dry);

    /// <summary>A doubted test must be repeated.</summary>
    public static Rule RepeatTest { get; } = new("R-014", Priority.Medium, None, None, Dry);

    /// <summary>Combined chlorine is too large a part of free or total chlorine.</summary>
    public static Rule CombinedPart { get; } = new("R-015", Priority.Medium, None, None, Dry);

    /// <summary>A value changes faster than dosing and bathers make it.</summary>
    public static Rule ChangesTooFast { get; } = new("R-016", Priority.Medium, Minute, TwoMinutes, Unseen, ClearsByReading: true);

    /// <summary>A value is on its way to a limit.</summary>
    public static Rule HeadsForLimit { get; } = new("R-017", Priority.Low, TwoMinutes, TwoMinutes, Unseen, ClearsByReading: true);

    /// <summary>The water dissolves or deposits calcium carbonate.</summary>
    public static Rule OutOfBalance { get; } = new("R-018", Priority.Low, None, None, Dry);

    /// <summary>A probe has fallen silent.</summary>
    public static Rule Silent { get; } = new("R-020", Priority.Medium, None, None, Dry | SuppressedWhile.ProbeWork);

    /// <summary>A probe cannot be believed.</summary>
    public static Rule ProbeNotTrusted { get; } = new("R-021", Priority.Medium, None, None, Dry);

    /// <summary>No sample flow.</summary>
    public static Rule NoSampleFlow { get; } = new("R-022", Priority.Medium, TimeSpan.FromSeconds(15), TimeSpan.FromSeconds(5), Dry | SuppressedWhile.Backwash);

    /// <summary>A device's clock disagrees with ours.</summary>
    public static Rule ClockDoubted { get; } = new("R-023", Priority.Low, TwoMinutes, TwoMinutes, Dry | SuppressedWhile.ProbeWork);

    /// <summary>A dosing pump reports a fault.</summary>
    public static Rule PumpFault { get; } = new("R-030", Priority.High, None, None);

    /// <summary>A chemical tank is nearly empty.</summary>
    public static Rule TankLow { get; } = new("R-031", Priority.Low, Minute, Minute, ClearsByReading: true);

    /// <summary>Dosing pumps are following a value that is wrong.</summary>
    public static Rule PumpsFollowWrongValue { get; } = new("R-032", Priority.Medium, TwoMinutes, TwoMinutes, Dry);

    /// <summary>A dosing pump runs while no water flows.</summary>
    public static Rule DosesWithoutFlow { get; } = new("R-033", Priority.Critical, Brief, FiveSeconds, Latches: true) { MustBeMadeSafe = true };

    /// <summary>The circulation runs again before dosing into standing water was made safe.</summary>
    public static Rule RestartedUnsafe { get; } = new("R-034", Priority.Critical, None, FiveSeconds, Latches: true);

    /// <summary>A dosing pump strokes and nothing arrives.</summary>
    public static Rule NothingArrives { get; } = new("R-035", Priority.High, None, None, Dry);

    /// <summary>A product reaches the water without being asked for.</summary>
    public static Rule ComesUnasked { get; } = new("R-036", Priority.High, None, None, Latches: true);

    /// <summary>A dosing pump runs on unasked, or past what is plausible in a day.</summary>
    public static Rule DosesTooMuch { get; } = new("R-037", Priority.High, None, None, Latches: true);

    /// <summary>The dosing pumps deliver each other's product.</summary>
    public static Rule ProductsSwapped { get; } = new("R-038", Priority.Critical, None, None, Latches: true);

    /// <summary>What a dosing pump brings does too little.</summary>
    public static Rule DoesTooLittle { get; } = new("R-039", Priority.Medium, None, None, Dry);

    /// <summary>A manual check is overdue.</summary>
    public static Rule CheckOverdue { get; } = new("R-040", Priority.Low, None, None, SuppressedWhile.NotOpen);

    /// <summary>A test by hand that a doubt asked for was not made in time.</summary>
    public static Rule TestWanted { get; } = new("R-041", Priority.Medium, None, None, Dry);

    /// <summary>The reagent in use is out of date.</summary>
    public static Rule ReagentOutOfDate { get; } = new("R-042", Priority.Low, None, None);

    /// <summary>A product was put into the tank of another.</summary>
    public static Rule WrongProductInTank { get; } = new("R-043", Priority.Critical, None, None, Latches: true) { MustBeMadeSafe = true, OfOneTank = true };

    /// <summary>A tank was filled and nobody wrote down what with.</summary>
    public static Rule TankFilledByNobody { get; } = new("R-044", Priority.Low, None, None);

    /// <summary>A product may be used up before an order would come.</summary>
    public static Rule StockRunsOut { get; } = new("R-045", Priority.Low, None, None);

    /// <summary>A laboratory found more of an organism than its limit.</summary>
    public static Rule LaboratoryOutside { get; } = new("R-060", Priority.High, None, None, ClearsByReading: true);

    /// <summary>A planned sample for the laboratory was not taken.</summary>
    public static Rule LaboratorySampleOverdue { get; } = new("R-061", Priority.Low, None, None);

    /// <summary>After a result outside its limit no resample was taken in time.</summary>
    public static Rule ResampleOverdue { get; } = new("R-062", Priority.Medium, None, None);

    // The minute of grace is the shell's: it alone knows of the attempts.
    /// <summary>A way by which people are told does not deliver.</summary>
    public static Rule ChannelFails { get; } = new("R-080", Priority.High, None, None);

    /// <summary>The circulation is low or lost.</summary>
    public static Rule CirculationLow { get; } = new("R-050", Priority.Medium, Minute, Minute, SuppressedWhile.Backwash, ClearsByReading: true);

    /// <summary>The pressure across a filter has risen: a wash is due.</summary>
    public static Rule FilterPressureRisen { get; } = new("R-051", Priority.Low, TwoMinutes, TwoMinutes, SuppressedWhile.Backwash, ClearsByReading: true);

    /// <summary>A filter was not washed in time.</summary>
    public static Rule BackwashOverdue { get; } = new("R-052", Priority.Low, None, None);

    // A mean over an hour has waited long enough.
    /// <summary>The turnover falls short of its design.</summary>
    public static Rule TurnoverShort { get; } = new("R-053", Priority.Low, None, None, SuppressedWhile.Backwash, ClearsByReading: true);

    // Whoever keeps bathers out has all the time there is: the gate asks for the test before the pool opens.
    /// <summary>A breach stands open past its deadline.</summary>
    public static Rule ExceptionOverdue { get; } = new("R-070", Priority.Medium, None, None, SuppressedWhile.NotOpen);

    // A thing may have several pieces of work, each with an alarm of its own: rule and thing together do not name one.
    /// <summary>Planned work was not done in time.</summary>
    public static Rule PlannedWorkOverdue { get; } = new("R-090", Priority.Low, None, None) { MayLeaveService = false };

    /// <summary>All rules by number.</summary>
    public static FrozenDictionary<string, Rule> All { get; } = new[]
    {
        ExceptionOverdue,
        StopPh, StopFreeChlorine, StopTemperature, StopBottom, IncidentOpen, OutsideClosure, TestOutsideClosure, BelowLimit, AboveLimit, TestOutsideLimit, TestOutsideStop,
        RepeatTest, CombinedPart, ChangesTooFast, HeadsForLimit, OutOfBalance, Silent, ProbeNotTrusted, NoSampleFlow, ClockDoubted, PumpFault, TankLow, PumpsFollowWrongValue, DosesWithoutFlow,
        RestartedUnsafe, NothingArrives, ComesUnasked, DosesTooMuch, ProductsSwapped, DoesTooLittle,
        CheckOverdue, TestWanted, ReagentOutOfDate, CirculationLow, FilterPressureRisen, BackwashOverdue, TurnoverShort, LaboratoryOutside, LaboratorySampleOverdue, ResampleOverdue,
        WrongProductInTank, TankFilledByNobody, StockRunsOut,
        ChannelFails, PlannedWorkOverdue,
    }.ToFrozenDictionary(r => r.Number, StringComparer.Ordinal);
}
