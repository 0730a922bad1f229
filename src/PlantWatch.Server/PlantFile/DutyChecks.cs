using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Server.PlantFile;

/// <summary>Who is named exists and can be written to, and at no hour of the week is a letter written to nobody.</summary>
internal static class DutyChecks
{
    private const int MinutesOfDay = 24 * 60;
    private const int MinutesOfWeek = 7 * MinutesOfDay;

    public static void Check(Place root, Complaints complaints)
    {
        var telling = root["telling"];
        var mail = telling["channels"].Items.FirstOrDefault(channel => channel["kind"].String == "email");
        foreach (var person in telling["sheets"].Items.SelectMany(sheet => sheet["to"].Items)) Person(root["people"], person, mail, complaints);
        foreach (var pool in telling["sheets"].Items.SelectMany(sheet => sheet["pools"].Items)) Pool(root, pool, complaints);
        if (!mail.Exists && telling["sheets"].Items.Any()) complaints.Add(telling["sheets"], "sheets go by letter: add a channel of kind email");
        foreach (var person in telling["roster"].Items.Select(shift => shift["person"]).Concat(telling["escalation"].Items)) Person(root["people"], person, mail, complaints);
        if (!mail.Exists || telling["escalation"].Items.Any()) return;
        if (!telling["roster"].Items.Any()) complaints.Add(mail, "letters need somebody to go to: name who is on call in roster, or whom to tell in escalation");
        else if (FirstGap(telling["roster"]) is { } gap) complaints.Add(telling["roster"], $"nobody is on call on {gap}; fill the roster, or name in escalation who stands in");
    }

    private static void Pool(Place root, Place pool, Complaints complaints)
    {
        if (pool.String is { } id && !root["circuits"].Items.SelectMany(c => c["pools"].Items).Any(p => p["id"].String == id)) complaints.Add(pool, $"there is no pool '{Text.Short(id)}' in this file");
    }

    private static void Person(Place people, Place person, Place mail, Complaints complaints)
    {
        if (person.String is not { } id) return;
        ReferenceChecks.Named(person, "person", ReferenceChecks.Ids(people), complaints);
        var known = people.Items.FirstOrDefault(other => other["id"].String == id);
        if (mail.Exists && known.Exists && !known["email"].Exists)
            complaints.Add(person, $"'{Text.Short(id)}' has no email among people (line {known.Line}), so the channel on line {mail.Line} cannot write to them");
    }

    // By minutes on the wall; a shift that ends after Sunday's midnight goes on in Monday's first hours.
    private static string? FirstGap(Place roster)
    {
        var covered = new bool[MinutesOfWeek];
        foreach (var shift in roster.Items)
        {
            if (!IsWhole(shift)) return null;
            var hours = TellingBuilder.Hours(shift);
            foreach (var day in TellingBuilder.Days(shift["days"]))
                for (var (minute, left) = (((((int)day + 6) % 7) * MinutesOfDay) + Minute(hours.From), Length(hours)); left > 0; minute++, left--) covered[minute % MinutesOfWeek] = true;
        }

        var first = Array.IndexOf(covered, false);
        return first < 0 ? null : $"{(DayOfWeek)(((first / MinutesOfDay) + 1) % 7)} at {TimeOnly.MinValue.AddMinutes(first % MinutesOfDay):HH\\:mm}";
    }

    // What the schema complains of is not looked at again.
    private static bool IsWhole(Place shift) =>
        IsTime(shift["from"]) && IsTime(shift["to"]) && (!shift["days"].Exists || shift["days"].Items.All(day => EnumWords<DayOfWeek>.Find(day.String) is not null));

    private static bool IsTime(Place at) => TimeOnly.TryParseExact(at.String, "HH:mm", out _);

    private static int Minute(TimeOnly time) => (time.Hour * 60) + time.Minute;

    private static int Length(WallHours hours) => hours.To > hours.From ? Minute(hours.To) - Minute(hours.From) : MinutesOfDay - Minute(hours.From) + Minute(hours.To);
}
