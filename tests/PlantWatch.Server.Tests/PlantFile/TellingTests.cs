using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

public sealed class TellingTests
{
    private const string Plant =
        """
        site: { name: Hall, time_zone: Europe/London }
        people:
          - { id: ann, name: A. Sample, role: operator, email: ann@hall.example }
          - { id: ben, name: B. Sample, role: engineer, email: ben@hall.example }
        telling:
          channels:
            - { id: desk, name: Desk, kind: mqtt, topic: hall/alarms }
            - { id: house, name: House, kind: webhook, url: "https://desk.example/alarms", from: high }
            - { id: post, name: Post, kind: email, host: mail.hall.example, sender: alarms@hall.example, user: alarms, from: medium }
            - { id: own-post, name: Own post, kind: email, host: localhost, port: 2525, security: plain, sender: alarms@hall.example }
          roster:
            - { person: ann, days: [monday, friday], from: "08:00", to: "20:00" }
            - { person: ben, from: "20:00", to: "08:00" }
          quiet_hours: { from: "22:00", to: "07:00" }
          escalation: [ben, ann]
        circuits:
          - id: main
            name: Main circuit
            pools:
              - { id: pool, name: Pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 400 }
        """;

    private static TellingPlan Telling { get; } = PlantFileReader.Read(Plant).Plan!.Telling;

    [Fact]
    public void Channels_are_read_each_with_what_its_kind_needs() => Assert.Equal(
        [
            new("desk", ChannelKind.Mqtt, Priority.Low) { Name = "Desk", Topic = "hall/alarms" },
            new("house", ChannelKind.Webhook, Priority.High) { Name = "House", Address = new("https://desk.example/alarms") },
            new("post", ChannelKind.Email, Priority.Medium) { Name = "Post", Mail = new("mail.hall.example", 587, MailSecurity.Starttls, "alarms@hall.example", "alarms") },
            new ChannelPlan("own-post", ChannelKind.Email, Priority.Low) { Name = "Own post", Mail = new("localhost", 2525, MailSecurity.Plain, "alarms@hall.example", null) },
        ],
        Telling.Channels.ToArray());

    [Fact]
    public void Hours_on_call_begin_on_the_days_that_are_named_or_on_every_day()
    {
        Assert.Equal([DayOfWeek.Monday, DayOfWeek.Friday], Telling.Roster[0].Days.ToArray());
        Assert.Equal(7, Telling.Roster[1].Days.Length);
        Assert.Equal(new WallHours(new(20, 0), new(8, 0)), Telling.Roster[1].Hours);
    }

    [Fact]
    public void Quiet_hours_escalation_and_addresses_are_read()
    {
        Assert.Equal(new WallHours(new(22, 0), new(7, 0)), Telling.Quiet);
        Assert.Equal(["ben", "ann"], Telling.Escalation.ToArray());
        Assert.Equal("ann@hall.example", PlantFileReader.Read(Plant).Plan!.People[0].Email);
    }

    [Fact]
    public void Every_circuit_knows_how_its_people_are_told() => Assert.Equal(Telling.Channels.ToArray(), PlantFileReader.Read(Plant).Plan!.Circuits[0].Telling.Channels.ToArray());

    [Fact]
    public void A_plant_that_says_nothing_of_it_tells_nobody()
    {
        var silent = PlantFileReader.Read(Plant[..Plant.IndexOf("telling:", StringComparison.Ordinal)] + Plant[Plant.IndexOf("circuits:", StringComparison.Ordinal)..]);

        Assert.Same(TellingPlan.None, silent.Plan!.Telling);
    }

    [Fact]
    public void A_roster_that_covers_the_whole_week_needs_nobody_to_stand_in()
    {
        var whole = Plant.Replace("escalation: [ben, ann]", "escalation: []", StringComparison.Ordinal).Replace("days: [monday, friday], ", "", StringComparison.Ordinal);

        Assert.Empty(PlantFileReader.Read(whole).Errors);
    }
}
