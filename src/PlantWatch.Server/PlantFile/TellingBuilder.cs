using System.Collections.Immutable;
using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Server.PlantFile;

/// <summary>Makes the plan of telling from a file that has passed every check.</summary>
internal static class TellingBuilder
{
    private const int Submission = 587;
    private const int SubmissionOverTls = 465;

    public static TellingPlan Build(Place at) => !at.Exists ? TellingPlan.None : new()
    {
        Channels = [.. at["channels"].Items.Select(Channel)],
        Roster = [.. at["roster"].Items.Select(shift => new Shift(shift["person"].String!, Days(shift["days"]), Hours(shift)))],
        Quiet = at["quiet_hours"] is { Exists: true } quiet ? Hours(quiet) : null,
        Sheets = [.. at["sheets"].Items.Select(Sheet)],
        Escalation = [.. at["escalation"].Items.Select(person => person.String!)],
    };

    /// <summary>The days that a shift begins on; all of them when none is named.</summary>
    public static ImmutableArray<DayOfWeek> Days(Place at) =>
        at.Exists ? [.. at.Items.Select(day => EnumWords<DayOfWeek>.Find(day.String)!.Value)] : [.. Enum.GetValues<DayOfWeek>()];

    /// <summary>A span on the wall.</summary>
    public static WallHours Hours(Place at) => new(Time(at["from"]), Time(at["to"]));

    private static SheetPlan Sheet(Place at) => new(
        at["kind"].String!, [.. at["pools"].Items.Select(pool => pool.String!)], Time(at["at"]), EnumWords<SheetRhythm>.Find(at["every"].String) ?? SheetRhythm.Day, [.. at["to"].Items.Select(person => person.String!)]);

    private static ChannelPlan Channel(Place at) =>
        new(at["id"].String!, EnumWords<ChannelKind>.Find(at["kind"].String)!.Value, EnumWords<Priority>.Find(at["from"].String) ?? Priority.Low)
        {
            Name = at["name"].String!,
            Topic = at["topic"].String,
            Address = at["url"].String is { } url ? new Uri(url) : null,
            AddressIsApart = at["url_kept_apart"].Boolean == true,
            Mail = at["host"].String is { } host ? Mail(at, host) : null,
        };

    private static MailPlan Mail(Place at, string host)
    {
        var security = EnumWords<MailSecurity>.Find(at["security"].String) ?? MailSecurity.Starttls;
        return new(host, (int?)at["port"].Number ?? (security == MailSecurity.Tls ? SubmissionOverTls : Submission), security, at["sender"].String!, at["user"].String);
    }

    private static TimeOnly Time(Place at) => TimeOnly.ParseExact(at.String!, "HH:mm", CultureInfo.InvariantCulture);
}
