using System.Globalization;
using PlantWatch.Campaign;
using PlantWatch.Fuzz;
using PlantWatch.Server;

const string Usage = "tests/campaign/run [--kills 20] [--rate 2000] [--mode external|embedded|both] [--devices 20] [--tries 1] [--seed 1] [--broker-too] [--never-catch-up] [--no-page]";

if (args is ["fuzz", .. var rest]) return ProgramOfFuzz.Run(rest);

var asked = new Dictionary<string, string>(StringComparer.Ordinal);
for (var i = 0; i < args.Length; i++)
{
    if (args[i] is "--no-page" or "--broker-too" or "--never-catch-up") asked[args[i][2..]] = "yes";
    else if (args[i] is "--kills" or "--rate" or "--mode" or "--devices" or "--tries" or "--seed" && i + 1 < args.Length) asked[args[i][2..]] = args[++i];
    else return Complain();
}

int Number(string name, int otherwise) => asked.TryGetValue(name, out var text) ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : otherwise;

BrokerMode[] modes = asked.GetValueOrDefault("mode", "both") switch
{
    "external" => [BrokerMode.External], "embedded" => [BrokerMode.Embedded], "both" => [BrokerMode.External, BrokerMode.Embedded], _ => [],
};
if (modes.Length == 0) return Complain();

Console.WriteLine(Report.Head);
var (rows, broken) = (new List<string>(), 0);
foreach (var mode in modes)
{
    for (var number = 0; number < Number("tries", 1); number++)
    {
        var options = new CampaignOptions
        {
            Mode = mode, Kills = Number("kills", 20), Rate = Number("rate", 2000), Devices = Number("devices", 20), Seed = Number("seed", 1) + number,
            CatchesUp = !asked.ContainsKey("never-catch-up"), Births = 3, BrokerToo = mode == BrokerMode.External && asked.ContainsKey("broker-too"),
        };
        await using var one = new Try(options);
        var findings = await one.RunAsync();
        rows.Add(Report.Row(findings));
        Console.WriteLine(rows[^1]);
        string[] wrong = [.. findings.Broken()];
        foreach (var sentence in wrong) Console.WriteLine($"  BROKEN: {sentence}");
        broken += wrong.Length;
        if (wrong.Length == 0) Directory.Delete(options.Folder, recursive: true);
        else Console.WriteLine($"  The record is left in {options.Folder}");
    }
}
if (!asked.ContainsKey("no-page")) Report.Keep(rows, TimeProvider.System.GetUtcNow());
return broken == 0 ? 0 : 1;

static int Complain()
{
    Console.Error.WriteLine(Usage);
    return 2;
}
