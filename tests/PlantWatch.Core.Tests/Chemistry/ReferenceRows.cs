using System.Globalization;
using System.Text;

namespace PlantWatch.Core.Tests.Chemistry;

/// <summary>Reads the check values that lie beside the tests, as published, with their source and provenance.</summary>
internal static class ReferenceRows
{
    public static IReadOnlyList<Dictionary<string, string>> Of(string folder, string file)
    {
        var here = typeof(ReferenceRows).Assembly;
        var name = $"{here.GetName().Name}.{folder}.{file}";
        using var stream = here.GetManifestResourceStream(name) ?? throw new FileNotFoundException(name);
        using var reader = new StreamReader(stream);
        var head = Fields(reader.ReadLine()!);
        var rows = new List<Dictionary<string, string>>();
        while (reader.ReadLine() is { } line)
            rows.Add(head.Zip(Fields(line)).ToDictionary(pair => pair.First, pair => pair.Second));
        return rows;
    }

    public static double Number(this Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<string> Fields(string line)
    {
        var (fields, field, quoted) = (new List<string>(), new StringBuilder(), false);
        foreach (var c in line)
        {
            if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else field.Append(c);
        }

        fields.Add(field.ToString());
        return fields;
    }
}
