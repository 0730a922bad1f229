using System.Collections.Immutable;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>All boards as they stand: those that come with the server, and the plant's own, which stand in for shipped ones of the same name.</summary>
internal sealed class BoardShelf
{
    private readonly ImmutableSortedDictionary<string, BoardStanding> _boards;

    private BoardShelf(ImmutableSortedDictionary<string, BoardStanding> boards) => _boards = boards;

    /// <summary>None at all.</summary>
    public static BoardShelf Empty { get; } = new(ImmutableSortedDictionary.Create<string, BoardStanding>(StringComparer.Ordinal));

    /// <summary>In the order of their ids.</summary>
    public IEnumerable<BoardStanding> InOrder => _boards.Values;

    /// <summary>A board; null when there is none of that id.</summary>
    public BoardStanding? Find(string id) => _boards.GetValueOrDefault(id);

    /// <summary>What stands after another look. A board that was broken meanwhile keeps its last good version and bears its errors; those of a folder that cannot be read stay as they are.</summary>
    public BoardShelf After(BoardFolder shipped, BoardFolder own)
    {
        var next = ImmutableSortedDictionary.CreateBuilder<string, BoardStanding>(StringComparer.Ordinal);
        foreach (var board in Standing(shipped, false, next)) next[board.Id] = board;
        foreach (var board in Standing(own, true, next)) next[board.Id] = board;
        return new(next.ToImmutable());
    }

    private IEnumerable<BoardStanding> Standing(BoardFolder folder, bool own, ImmutableSortedDictionary<string, BoardStanding>.Builder shipped) =>
        folder.Trouble is null ? folder.Files.Select(source => Stand(source, own, own ? shipped.GetValueOrDefault(source.Id) : null)) : InOrder.Where(board => board.Own == own);

    private BoardStanding Stand(BoardSource source, bool own, BoardStanding? shipped)
    {
        var before = Find(source.Id) is { } known && known.Own == own ? known : null;
        if (before is not null && before.Source.IsSame(source)) return before;
        var (board, errors) = source.Understand();
        return new(source.Id, source, board ?? before?.Shown ?? shipped?.Shown, errors, own);
    }
}

/// <summary>One board as it stands.</summary>
/// <param name="Id">Name of its file without the ending.</param>
/// <param name="Source">The file as it lies there.</param>
/// <param name="Shown">The newest good version; null when there never was one.</param>
/// <param name="Errors">What is wrong with the file as it lies there; empty when it is the one that is shown.</param>
/// <param name="Own">It is the plant's, and not the one that comes with the server.</param>
internal sealed record BoardStanding(string Id, BoardSource Source, Board? Shown, IReadOnlyList<PlantFileError> Errors, bool Own);
