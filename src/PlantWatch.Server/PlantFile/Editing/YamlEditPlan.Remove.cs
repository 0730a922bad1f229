namespace PlantWatch.Server.PlantFile.Editing;

internal sealed partial class YamlEditPlan
{
    private IReadOnlyList<TextChange> Remove(IReadOnlyList<object> steps)
    {
        var holder = Find(steps.SkipLast(1));
        var (at, parts) = holder switch
        {
            PlantMapping m => (m.Entries.ToList().FindIndex(e => Equals(e.Key, steps[^1])), m.Entries.Select(e => (From: e.KeyAt.Start, To: EndOf(e))).ToArray()),
            PlantList l => ((int)steps[^1], l.Items.Select(i => (From: i.At.Start, To: text.ContentEnd(i))).ToArray()),
            _ => throw new CannotEditException(EditFault.NotThere, holder.At.Start),
        };
        if (Anchored(Child(holder, steps[^1])!) is { } anchor) throw new CannotEditException(EditFault.Anchor, anchor);
        if (holder.At.Form == NodeForm.Flow) return OutOfFlow(holder, parts, at);
        if (parts.Length == 1) return Last(holder, [.. steps.SkipLast(1)], parts[0]);
        return holder is PlantList ? [Item(parts, at)] : [Key(parts, at)];
    }

    private IReadOnlyList<TextChange> OutOfFlow(PlantNode holder, (int From, int To)[] parts, int at)
    {
        if (text.IsOverLines(holder.At)) throw new CannotEditException(EditFault.FlowOverLines, holder.At.Start);
        if (parts.Length == 1) return [new(holder.At.Start + 1, holder.At.End - holder.At.Start - 2, "")];
        return at > 0 ? [Between(parts[at - 1].To, parts[at].To)] : [Between(parts[0].From, parts[1].From)];
    }

    private TextChange Item((int From, int To)[] parts, int at)
    {
        var dash = DashOf(parts[at].From);
        return at > 0 ? WholeLines(dash, parts[at].To) : Between(text.LineStart(dash), FirstLineOf(DashOf(parts[1].From), parts[0].To));
    }

    private TextChange Key((int From, int To)[] parts, int at)
    {
        var (from, to) = parts[at];
        if (text.IsFirstOnLine(from)) return at > 0 ? WholeLines(from, to) : Between(text.LineStart(from), FirstLineOf(parts[1].From, to));
        // The first key stands behind a dash: the next one takes its place.
        if (!text.Text.AsSpan(to, parts[at + 1].From - to).IsWhiteSpace()) throw new CannotEditException(EditFault.CommentBetween, to);
        return Between(from, parts[at + 1].From);
    }

    // A key or list that would stand there with nothing says so: nothing at all would mean something else.
    private IReadOnlyList<TextChange> Last(PlantNode holder, IReadOnlyList<object> path, (int From, int To) part)
    {
        var nothing = holder is PlantList ? "[]" : "{}";
        if (path.Count == 0) throw new CannotEditException(EditFault.WouldBeEmpty, 0);
        if (path[^1] is not string key || Find(path.SkipLast(1)) is not PlantMapping above) return [new(holder.At.Start, part.To - holder.At.Start, nothing)];
        var keyAt = above.Find(key)!.KeyAt;
        var colon = text.Text.IndexOf(':', keyAt.End);
        var line = holder is PlantList ? DashOf(part.From) : part.From;
        if (!text.IsFirstOnLine(line) || text.LineStart(line) <= colon) throw new CannotEditException(EditFault.NotSure, part.From);
        return [new(colon + 1, 0, " " + nothing), WholeLines(line, part.To)];
    }

    // From the end of the line before, so that what was put below a line is taken out without a trace. Blank lines that parted it go along.
    private TextChange WholeLines(int from, int to)
    {
        var start = text.LineStart(from);
        while (start > 0 && text.IsBlank(text.LineStart(start - 1))) start = text.LineStart(start - 1);
        return start == 0 ? Between(0, text.NextLine(to)) : Between(text.LineStop(text.LineStart(start - 1)), text.LineStop(to));
    }

    // Where the next one begins after the first is gone: comments above it stay with it, blank lines that parted the two go.
    private int FirstLineOf(int next, int to)
    {
        var at = text.NextLine(to);
        while (at < text.LineStart(next) && text.IsBlank(at)) at = text.NextLine(at);
        return at;
    }

    private int DashOf(int value)
    {
        var before = text.Text.AsSpan(0, value).TrimEnd();
        if (before.Length == 0 || before[^1] != '-' || !text.IsFirstOnLine(before.Length - 1)) throw new CannotEditException(EditFault.NotSure, value);
        return before.Length - 1;
    }

    private static int? Anchored(PlantNode node) => node.At.Anchored ? node.At.Start : node switch
    {
        PlantMapping m => m.Entries.Select(e => e.KeyAt.Anchored ? e.KeyAt.Start : Anchored(e.Value)).FirstOrDefault(a => a is not null),
        PlantList l => l.Items.Select(Anchored).FirstOrDefault(a => a is not null),
        _ => null,
    };

    private static TextChange Between(int from, int to) => new(from, to - from, "");
}
