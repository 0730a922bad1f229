namespace PlantWatch.Benchmarks.Kit;

/// <summary>One question put to the program, answered in figures of one run.</summary>
internal interface IBenchmark
{
    /// <summary>Name on the command line.</summary>
    string Name { get; }

    /// <summary>Heading in the report.</summary>
    string Title { get; }

    /// <summary>How it is measured, what stands beside it, and what the figure does not say.</summary>
    string Method { get; }

    /// <summary>Measures.</summary>
    Task<IReadOnlyList<Row>> RunAsync(Bench bench);
}

/// <summary>A line of the report.</summary>
/// <param name="What">What was measured, with its unit.</param>
/// <param name="Ours">The figure: median, and the range over the rounds where there is one.</param>
/// <param name="Baseline">The baseline of the same run; empty where there is none.</param>
/// <param name="Ratio">Ours to baseline: the median over the pairs of neighbouring rounds.</param>
/// <param name="ToReach">The target; empty where none is set.</param>
internal sealed record Row(string What, string Ours, string Baseline = "", string Ratio = "", string ToReach = "");

/// <summary>What a benchmark may use.</summary>
/// <param name="Quick">A sanity run: small numbers, two rounds.</param>
/// <param name="Folder">A folder of its own, on the disk that is measured; removed afterwards.</param>
internal sealed record Bench(bool Quick, string Folder)
{
    /// <summary>Rounds of each side.</summary>
    public int Rounds => Quick ? 2 : 5;

    /// <summary>The full size or a small one.</summary>
    public int Of(int full, int quick) => Quick ? quick : full;

    /// <summary>Says what goes on.</summary>
    public void Say(string sentence) => Console.Error.WriteLine($"   {sentence}");

    /// <summary>A new folder below <see cref="Folder"/>.</summary>
    public string NewFolder(string name) => Directory.CreateDirectory(Path.Combine(Folder, $"{name}-{Guid.NewGuid():N}")).FullName;
}
