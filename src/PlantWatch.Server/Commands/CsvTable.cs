using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace PlantWatch.Server.Commands;

/// <summary>What a table asks for and what it adds.</summary>
/// <param name="Needed">Columns that must be there, in any order; others are kept as they are.</param>
/// <param name="Added">Columns that are added behind them.</param>
internal sealed record TableColumns(string[] Needed, string[] Added);

/// <summary>Reads a table of comma-separated values row by row, works each row out and writes it with its answers. A bad row is named and the rest still computed.</summary>
internal static class CsvTable
{
    /// <summary>Behind the answers stands what had to be said of the row; empty when nothing.</summary>
    public const string Remark = "remark";

    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture)
    {
        PrepareHeaderForMatch = head => head.Header.Trim().TrimStart('\uFEFF'), TrimOptions = TrimOptions.Trim, MissingFieldFound = null, BadDataFound = null,
    };

    /// <summary>Runs a table through; 0 when every row was good, 1 when some were not, 2 when there is no table.</summary>
    public static int Run(string from, string to, TableColumns columns, Func<TableRow, RowAnswer> work, TextWriter output, TextWriter complaints)
    {
        try
        {
            if (from.Length == 0 || to.Length == 0) return Refuse(complaints, "a file name is empty");
            if (Target(from) == Target(to)) return Refuse(complaints, $"{to} would be written over while it is read");
            using var reader = new CsvReader(new StreamReader(from), Format);
            if (!reader.Read() || !reader.ReadHeader()) return Refuse(complaints, $"{from} is empty");
            var header = reader.HeaderRecord!.Select(h => h.Trim().TrimStart('\uFEFF')).ToArray();
            var missing = columns.Needed.Except(header).ToArray();
            if (header.FirstOrDefault(n => n.Length > 0 && header.Count(h => h == n) > 1) is { } twice) return Refuse(complaints, $"{from} has the column {twice} more than once");
            if (missing.Length > 0) return Refuse(complaints, $"{from} lacks the columns {string.Join(", ", missing)}");
            using var writer = new CsvWriter(new StreamWriter(to), new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
            return Rows(reader, writer, header, columns, work, output, complaints, to);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or CsvHelperException)
        {
            return Refuse(complaints, fault.Message.Split('\n')[0]);
        }
    }

    // Where a link leads is what would be written over.
    private static string Target(string path) => (File.Exists(path) ? new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true)?.FullName : null) ?? Path.GetFullPath(path);

    private static int Rows(
        CsvReader reader, CsvWriter writer, string[] header, TableColumns columns, Func<TableRow, RowAnswer> work, TextWriter output, TextWriter complaints, string to)
    {
        // An answer of an earlier run is written anew, not twice.
        string[] kept = [.. header.Where(h => !columns.Added.Contains(h) && h != Remark)];
        Write(writer, [.. kept, .. columns.Added, Remark]);
        var (good, bad) = (0, 0);
        while (reader.Read())
        {
            var row = new TableRow(name => reader.GetField(name) ?? "");
            var answer = work(row);
            var values = answer.Values.Count == 0 ? columns.Added.Select(_ => (double?)null) : answer.Values;
            Write(writer, [.. kept.Select(row.Text), .. values.Select(Number), answer.Remark]);
            if (answer.Values.Count > 0) good++;
            else
            {
                bad++;
                complaints.WriteLine($"line {reader.Parser.RawRow}, {columns.Needed[0]} {Short(row.Text(columns.Needed[0]))}: {answer.Remark}");
            }
        }

        writer.Flush();
        output.WriteLine($"Rows worked out: {good}, not: {bad}; written to {to}");
        return bad == 0 ? 0 : 1;
    }

    /// <summary>A field as it is shown in a complaint: its beginning.</summary>
    public static string Short(string text) => text.Length <= 60 ? text : string.Concat(text.AsSpan(0, 60), "...");

    private static string Number(double? value) => value is { } number && double.IsFinite(number) ? number.ToString("0.######", CultureInfo.InvariantCulture) : "";

    private static void Write(CsvWriter writer, IEnumerable<string> fields)
    {
        foreach (var field in fields) writer.WriteField(field);
        writer.NextRecord();
    }

    private static int Refuse(TextWriter complaints, string why)
    {
        complaints.WriteLine(why);
        return 2;
    }
}

/// <summary>One row of a table.</summary>
internal sealed class TableRow(Func<string, string> field)
{
    private readonly List<string> _wrong = [];

    /// <summary>What is wrong with the fields that were asked for.</summary>
    public string Wrong => string.Join("; ", _wrong);

    /// <summary>True while no field was wrong.</summary>
    public bool IsGood => _wrong.Count == 0;

    /// <summary>A field as it stands.</summary>
    public string Text(string column) => field(column);

    /// <summary>A field as a number in a range; a wrong one is remembered and gives the low end.</summary>
    public double Number(string column, Core.Quantities.ValueRange range)
    {
        var text = Text(column);
        if (text.Length == 0) _wrong.Add($"{column} is missing");
        else if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number)) _wrong.Add($"{column} \"{CsvTable.Short(text)}\" is no number");
        else if (!range.Contains(number)) _wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{column} {number} is outside {range.Low} to {range.High}"));
        else return number;
        return range.Low;
    }

    /// <summary>Remembers something else that is wrong.</summary>
    public void Complain(string what) => _wrong.Add(what);
}

/// <summary>The answers to a row, in the order of the added columns.</summary>
/// <param name="Values">The answers; empty when the row could not be worked out.</param>
/// <param name="Remark">What has to be said of it.</param>
internal sealed record RowAnswer(IReadOnlyList<double?> Values, string Remark)
{
    /// <summary>A row that could not be worked out.</summary>
    public static RowAnswer Bad(string why) => new([], why);
}
