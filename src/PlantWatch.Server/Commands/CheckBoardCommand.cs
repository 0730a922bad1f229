using PlantWatch.Core.Plans;
using PlantWatch.Server.Boards;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Commands;

/// <summary>Checks boards from the command line, so that they can be put right before they are shown.</summary>
internal static class CheckBoardCommand
{
    /// <summary>Prints every error with its file, or what was understood. Returns 0 when all boards are good and 1 when one is not.</summary>
    /// <param name="files">The boards.</param>
    /// <param name="plant">A plant file that their ids are held against; null when they are not.</param>
    /// <param name="output">Where to print.</param>
    public static int Run(IReadOnlyList<string> files, string? plant, TextWriter output)
    {
        if (plant is null) return Run(files, (PlantPlan?)null, output);
        var result = PlantFileSource.Read(plant).Understand();
        if (result.Plan is { } plan) return Run(files, plan, output);
        foreach (var error in result.Errors) output.WriteLine($"{plant}, {error}");
        output.WriteLine("the plant file has errors: nothing was checked");
        return 1;
    }

    private static int Run(IReadOnlyList<string> files, PlantPlan? plan, TextWriter output)
    {
        var wrong = files.Sum(file => Check(file, plan, output));
        output.WriteLine(wrong == 0 ? "no errors" : wrong == 1 ? "1 error" : $"{wrong} errors");
        return wrong == 0 ? 0 : 1;
    }

    private static int Check(string path, PlantPlan? plan, TextWriter output)
    {
        var (board, errors) = BoardSource.Read(path).Understand();
        string[] said = [.. errors.Select(e => $"{path}, {e with { File = null }}"), .. Unknown(path, board, plan)];
        foreach (var line in said) output.WriteLine(line);
        if (said.Length == 0 && board is not null) output.WriteLine($"{path}: {board.Title}, for the {EnumWords<BoardReader>.Word(board.For)}, {board.Tiles.Length} tiles");
        return said.Length;
    }

    private static IEnumerable<string> Unknown(string path, Board? board, PlantPlan? plan) =>
        board is null ? [] : board.Tiles.SelectMany((tile, i) => BoardIds.Problems(tile, plan).Select(problem => $"{path}, line {tile.Line}, tiles[{i}].of: {problem}"));
}
