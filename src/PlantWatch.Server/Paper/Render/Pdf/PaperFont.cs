using PdfSharp.Fonts;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>The font of what is printed: the one of the pictures, brought along and embedded, so that a page looks the same on every machine and can be read by machines too.</summary>
internal sealed class PaperFont : IFontResolver
{
    /// <summary>Family name.</summary>
    public const string Name = Charts.ChartFont.Name;

    private static readonly Lazy<byte[]> Bytes = new(Load);
    private static readonly Lock Once = new();

    private PaperFont()
    {
    }

    /// <summary>Hands the font to the library; once is enough.</summary>
    public static void Use()
    {
        lock (Once) GlobalFontSettings.FontResolver ??= new PaperFont();
    }

    // One face: what is bold is drawn bolder, what is asked for by another name is this one all the same.
    FontResolverInfo? IFontResolver.ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(Name, isBold, isItalic);

    byte[]? IFontResolver.GetFont(string faceName) => Bytes.Value;

    private static byte[] Load()
    {
        using var file = typeof(PaperFont).Assembly.GetManifestResourceStream("DejaVuSans.ttf") ?? throw new InvalidOperationException("the font of the sheets was not built into the program");
        using var bytes = new MemoryStream();
        file.CopyTo(bytes);
        return bytes.ToArray();
    }
}
