using PlantWatch.Mutation;

// The tests of a folder are those of the folder of the same name.
// worker FOLDER many|fresh NUMBERS SPACES, started by the campaign itself; or REPOSITORY FOLDER... with what is to be changed.
if (args is ["worker", var at, var how, var numbers, var spacesOfTests])
    return Worker.Run(at, [.. numbers.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)], spacesOfTests.Split(','), how == "fresh");

var (root, parts) = (Path.GetFullPath(args[0]), args[1..]);
var folder = Directory.CreateTempSubdirectory("plantwatch-mutation-").FullName;
foreach (var file in Directory.EnumerateFiles($"{root}/tests/PlantWatch.Core.Tests/bin/Release/net10.0", "*.dll")) File.Copy(file, $"{folder}/{Path.GetFileName(file)}");
var mutants = MutatedCore.Write($"{root}/src/PlantWatch.Core", parts, $"{folder}/PlantWatch.Core.dll");
Console.WriteLine($"{mutants.Count} mutants in {string.Join(", ", parts)}");

var campaign = new Campaign(folder, [.. parts.Select(p => $"PlantWatch.Core.Tests.{p.Split('/')[0]}").Distinct()], Environment.ProcessorCount);
var atStart = campaign.Learn();
campaign.Judge(mutants.Select(m => m.Id).Where(m => !atStart.Contains(m)));
campaign.JudgeApart(atStart);

foreach (var mutant in mutants.Where(m => campaign.Verdicts[m.Id] is null)) Console.WriteLine($"lives: {mutant.File}:{mutant.Line}  {mutant.What}");
foreach (var file in mutants.GroupBy(m => m.File)) Console.WriteLine(Row(file.Key, [.. file]));
Console.WriteLine(Row("all", mutants));
Directory.Delete(folder, recursive: true);
return 0;

string Row(string name, List<Mutant> some)
{
    var killed = some.Count(m => campaign.Verdicts[m.Id] is not null);
    return $"{100.0 * killed / some.Count,5:0.0} %  {killed} of {some.Count}  {name}";
}
