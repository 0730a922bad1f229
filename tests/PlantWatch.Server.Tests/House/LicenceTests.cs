namespace PlantWatch.Server.Tests.House;

public sealed class LicenceTests
{
    [Fact]
    public void Every_package_of_the_lock_files_carries_an_allowed_licence()
    {
        var refused = Packages.All.Where(p => !Licences.Allows(p.Licence, p.Distributed))
            .Select(p => $"{p.Name} {p.Version}: {(p.Licence.Length == 0 ? "no licence found" : p.Licence)}");
        Findings.None(refused, "not in tests/licences/allowed.txt");
        Assert.Contains(Packages.All, p => p.Name == "MQTTnet" && p.Licence == "MIT" && p.Distributed);
        Assert.Contains(Packages.All, p => p.Name == "xunit" && !p.Distributed);
    }

    [Fact]
    public void What_those_packages_carry_inside_is_allowed_too() => Assert.All(Licences.Inside, r => Assert.True(Licences.Allows(r[1], distributed: true), r[0]));

    [Theory]
    [InlineData("MIT", true, true)]
    [InlineData("(MIT OR GPL-3.0-only)", true, true)]
    [InlineData("MIT AND GPL-3.0-only", true, false)]
    [InlineData("MPL-2.0", true, false)]
    [InlineData("MPL-2.0", false, true)]
    [InlineData("AGPL-3.0-only", false, false)]
    [InlineData("", false, false)]
    public void A_licence_is_allowed_by_what_its_expression_leaves_to_us(string expression, bool distributed, bool allowed) =>
        Assert.Equal(allowed, Licences.Allows(expression, distributed));

    [ClientFact]
    public void The_notice_names_what_is_distributed_today() => Repository.IsUpToDate(Notice.Write(Packages.All), "docs", "NOTICE");

    private sealed class ClientFactAttribute : FactAttribute
    {
        public ClientFactAttribute()
        {
            if (!Packages.ClientIsInstalled) Skip = "the client's packages are not installed (dotnet build without SkipClient does it)";
        }
    }
}
