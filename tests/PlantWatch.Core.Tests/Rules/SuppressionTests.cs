using PlantWatch.Core.Plans;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Which state of the plant silences which rule, and in what words.</summary>
public sealed class SuppressionTests
{
    private const SuppressedWhile Everything = SuppressedWhile.NoSampleFlow | SuppressedWhile.Drained | SuppressedWhile.NotOpen | SuppressedWhile.Backwash | SuppressedWhile.ProbeWork;

    private static string? Code(Rule rule, SuppressedWhile now) => Suppression.CauseOf(rule, new Surroundings(now, "Main pool", "pH probe"))?.Code;

    [Fact]
    public void What_is_about_people_is_suppressed_by_nothing_but_that_there_is_no_water()
    {
        var critical = RuleBook.All.Values.Where(r => r.Priority == Priority.Critical).ToArray();
        Assert.NotEmpty(critical);
        Assert.All(critical, rule => Assert.Null(Code(rule, Everything & ~SuppressedWhile.Drained)));
        // An incident, and gas in pipes and plant room, are there without water in the pool too.
        Rule[] always = [RuleBook.IncidentOpen, RuleBook.DosesWithoutFlow, RuleBook.RestartedUnsafe, RuleBook.ProductsSwapped, RuleBook.WrongProductInTank];
        Assert.All(critical.Except(always), rule => Assert.Equal("suppressed.drained", Code(rule, SuppressedWhile.Drained)));
        Assert.All(always, rule => Assert.Null(Code(rule, Everything)));
    }

    [Fact]
    public void An_overdue_check_is_asked_for_only_while_the_pool_is_open()
    {
        Assert.Equal("suppressed.not_open", Code(RuleBook.CheckOverdue, SuppressedWhile.NotOpen));
        Assert.Null(Code(RuleBook.CheckOverdue, Everything & ~SuppressedWhile.NotOpen));
    }

    [Fact]
    public void The_water_of_a_closed_pool_is_watched_as_ever() =>
        Assert.All(new[] { RuleBook.BelowLimit, RuleBook.AboveLimit, RuleBook.Silent, RuleBook.TestWanted, RuleBook.PumpFault }, rule => Assert.Null(Code(rule, SuppressedWhile.NotOpen)));

    [Theory]
    [InlineData(SuppressedWhile.NoSampleFlow, "suppressed.no_flow", "pH probe")]
    [InlineData(SuppressedWhile.Backwash, "suppressed.backwash", "Main pool")]
    [InlineData(SuppressedWhile.Drained, "suppressed.drained", "Main pool")]
    [InlineData(SuppressedWhile.Drained | SuppressedWhile.NoSampleFlow, "suppressed.drained", "Main pool")]
    [InlineData(SuppressedWhile.Backwash | SuppressedWhile.NoSampleFlow, "suppressed.backwash", "Main pool")]
    public void A_limit_is_silenced_in_words_by_the_stronger_cause(SuppressedWhile now, string code, string named)
    {
        foreach (var rule in new[] { RuleBook.BelowLimit, RuleBook.AboveLimit })
        {
            var cause = Suppression.CauseOf(rule, new Surroundings(now, "Main pool", "pH probe"))!;
            Assert.Equal((code, named), (cause.Code, cause.Facts[0].Text));
        }
    }

    [Fact]
    public void Work_on_a_probe_silences_only_that_it_is_silent_and_late()
    {
        var silenced = RuleBook.All.Values.Where(r => Code(r, SuppressedWhile.ProbeWork) is not null);
        Assert.Equal([RuleBook.Silent.Number, RuleBook.ClockDoubted.Number], silenced.Select(r => r.Number).Order());
        Assert.Equal("suppressed.probe_work", Code(RuleBook.Silent, SuppressedWhile.ProbeWork));
    }

    [Fact]
    public void Pumps_and_their_tanks_are_watched_whatever_the_pool_does() =>
        Assert.All(new[] { RuleBook.PumpFault, RuleBook.TankLow }, rule => Assert.Null(Code(rule, Everything)));

    [Fact]
    public void Nothing_is_silenced_where_nothing_is_the_matter() => Assert.All(RuleBook.All.Values, rule => Assert.Null(Code(rule, SuppressedWhile.Never)));
}
