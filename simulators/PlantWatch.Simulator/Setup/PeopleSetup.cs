namespace PlantWatch.Simulator.Setup;

/// <summary>The operators and their habits.</summary>
internal sealed class PeopleSetup
{
    /// <summary>Invented names; each round is made by one of them.</summary>
    public List<string> Names { get; set; } = ["M. Okafor", "J. Lindqvist"];
    /// <summary>Standard deviation of being early or late for a round, minutes.</summary>
    public double ScatterMinutes { get; set; } = 9;
    /// <summary>Share of checks with a slip of the pen.</summary>
    public double SlipShare { get; set; } = 0.02;
    /// <summary>Share of checks typed hours later.</summary>
    public double LateShare { get; set; } = 0.05;
    /// <summary>Share of rounds that nobody makes.</summary>
    public double MissedShare { get; set; } = 0.01;
    /// <summary>Bicarbonate is added by hand when alkalinity tests below this, mg/L as CaCO3; 0 for never.</summary>
    public double BicarbonateBelow { get; set; } = 80;
    public List<RoundSetup> Rounds { get; set; } = [];
    public List<ExtraCheck> Extra { get; set; } = [];
}

/// <summary>Tests at set times of the site's day. Rounds of one pool at one time become one check.</summary>
internal sealed class RoundSetup
{
    public string Pool { get; set; } = "";
    public List<string> At { get; set; } = [];
    /// <summary>free_chlorine, total_chlorine, ph, temperature, total_alkalinity, calcium_hardness, dissolved_solids.</summary>
    public List<string> Tests { get; set; } = [];
    /// <summary>Weekdays in English; empty means every day.</summary>
    public List<DayOfWeek> Days { get; set; } = [];
}

/// <summary>One more check, at a moment of the scenario.</summary>
internal sealed class ExtraCheck
{
    public string After { get; set; } = "0m";
    public string Pool { get; set; } = "";
    public List<string> Tests { get; set; } = ["free_chlorine", "total_chlorine", "ph", "temperature"];
    public string Note { get; set; } = "";
}
