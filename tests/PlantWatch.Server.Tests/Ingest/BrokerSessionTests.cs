using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Tests.Ingest;

public sealed class BrokerSessionTests : IDisposable
{
    private static readonly Instant Then = Instant.FromUtc(2026, 3, 1, 7);
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 8);
    private static readonly BrokerSession Known = new("plantwatch@broker:1883", "s1", Then, ["pool/ph"], null);
    private readonly string _folder = Directory.CreateTempSubdirectory("session-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_first_connection_of_all_has_nothing_to_lose()
    {
        var session = BrokerSession.Resume(null, Known.Broker, present: false, Now, "s1");

        Assert.Equal(("s1", Now, null), (session.Name, session.LastHeard, session.Lost));
        Assert.Empty(session.Filters);
    }

    [Fact]
    public void A_session_that_is_present_keeps_its_name_since_its_packets_do() =>
        Assert.Equal(Known with { LastHeard = Now }, BrokerSession.Resume(Known, Known.Broker, present: true, Now, "s2"));

    [Fact]
    public void A_session_that_is_gone_is_lost_from_when_it_was_last_heard_and_the_new_one_has_a_new_name()
    {
        var session = BrokerSession.Resume(Known, Known.Broker, present: false, Now, "s2");

        Assert.Equal(("s2", new LostSession("s1", Then)), (session.Name, session.Lost));
    }

    [Fact]
    public void A_loss_that_was_not_told_yet_is_not_forgotten_over_the_next_one_nor_over_a_resumption()
    {
        var lost = BrokerSession.Resume(Known, Known.Broker, present: false, Now, "s2");

        Assert.Equal(new LostSession("s1", Then), BrokerSession.Resume(lost, Known.Broker, present: false, Now, "s3").Lost);
        Assert.Equal(new LostSession("s1", Then), BrokerSession.Resume(lost, Known.Broker, present: true, Now, "s3").Lost);
    }

    [Fact]
    public void Another_broker_or_client_id_is_another_session_and_not_a_loss() =>
        Assert.Null(BrokerSession.Resume(Known, "plantwatch@elsewhere:1883", present: false, Now, "s2").Lost);

    [Fact]
    public void A_stranger_s_leftover_session_gets_a_name_of_ours() =>
        Assert.Equal("s1", BrokerSession.Resume(null, Known.Broker, present: true, Now, "s1").Name);

    [Fact]
    public void The_file_gives_back_what_was_kept()
    {
        var file = new BrokerSessionFile(Path.Combine(_folder, "made", "here"), NullLogger.Instance);
        Assert.Null(file.Load());
        file.Save(Known with { Lost = new("s0", Then) });
        file.Save(Known with { Lost = new("s0", Now) });

        var loaded = file.Load();

        Assert.Equal((Known.Broker, Known.Name, Then, new LostSession("s0", Now)), (loaded!.Broker, loaded.Name, loaded.LastHeard, loaded.Lost));
        Assert.Equal(["pool/ph"], loaded.Filters);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"broker\":")]
    [InlineData("[]")]
    public void A_broken_file_is_no_session(string text)
    {
        File.WriteAllText(Path.Combine(_folder, "broker-session.json"), text);
        Assert.Null(new BrokerSessionFile(_folder, NullLogger.Instance).Load());
    }
}
