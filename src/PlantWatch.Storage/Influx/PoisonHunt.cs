namespace PlantWatch.Storage.Influx;

/// <summary>Finds the lines that a server refuses for good, by halving. Lines that are there already are written again on the way, which changes nothing.</summary>
internal sealed class PoisonHunt(IReadOnlyList<string> lines, Func<IEnumerable<string>, Task<WriteAnswer>> write)
{
    private readonly List<Refused> _found = [];

    /// <summary>Lines that follow one another and are refused for one reason.</summary>
    public readonly record struct Refused(int First, int Count, string Words);

    /// <summary>What was found, in the order of the lines.</summary>
    public IReadOnlyList<Refused> Found => _found;

    /// <summary>Writes a stretch of the lines. The answer is that all of it is there but for <see cref="Found"/>, or why it could not be finished.</summary>
    public async Task<WriteAnswer> WriteAsync(int first, int count)
    {
        var answer = await write(lines.Skip(first).Take(count)).ConfigureAwait(false);
        if (!answer.IsForGood) return answer;
        // A server that says that it refused as many as it got need not be asked about each.
        if (count == 1 || answer.Dropped >= count) return Add(new(first, count, answer.Words));
        var half = count / 2;
        var left = await WriteAsync(first, half).ConfigureAwait(false);
        return left.Taking == Taking.Taken ? await WriteAsync(first + half, count - half).ConfigureAwait(false) : left;
    }

    private WriteAnswer Add(Refused refused)
    {
        _found.Add(refused);
        return WriteAnswer.Good;
    }
}
