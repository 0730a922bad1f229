using PdfSharp.Drawing;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>Breaks text into lines of a width: between words, and within a word only where it is wider than the line.</summary>
internal sealed class Wrapping(XGraphics measure)
{
    private readonly Dictionary<(XFont, string), double> _widths = [];

    /// <summary>Width of a text.</summary>
    public double Of(string text, XFont font)
    {
        if (_widths.TryGetValue((font, text), out var known)) return known;
        return _widths[(font, text)] = measure.MeasureString(text, font).Width;
    }

    /// <summary>The longest word of a text.</summary>
    public double Longest(string text, XFont font) => text.Split(' ').Max(w => Of(w, font));

    /// <summary>The lines of a text.</summary>
    public IReadOnlyList<string> Lines(string text, XFont font, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n')) Paragraph(paragraph, font, width, lines);
        return lines;
    }

    private void Paragraph(string text, XFont font, double width, List<string> lines)
    {
        // What was measured to fit fits, whatever the last digit.
        width += 0.05;
        var line = "";
        foreach (var word in text.Split(' ').SelectMany(w => Pieces(w, font, width)))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Of(longer, font) > width)
            {
                lines.Add(line);
                line = word;
            }
            else line = longer;
        }

        lines.Add(line);
    }

    private IEnumerable<string> Pieces(string word, XFont font, double width)
    {
        while (word.Length > 1 && Of(word, font) > width)
        {
            var length = word.Length - 1;
            while (length > 1 && Of(word[..length], font) > width) length--;
            if (char.IsHighSurrogate(word[length - 1]) && length > 1) length--;
            yield return word[..length];
            word = word[length..];
        }

        yield return word;
    }
}
