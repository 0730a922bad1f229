namespace PlantWatch.Server.PlantFile;

/// <summary>Where a piece of a YAML file stands in its text, and how it is written. The default is nowhere.</summary>
/// <param name="Start">Index of its first character.</param>
/// <param name="End">Index after its last character; a value that is not there ends where it starts.</param>
/// <param name="Form">How it is written.</param>
/// <param name="Anchored">It carries an anchor (&amp;name).</param>
internal readonly record struct Extent(int Start, int End, NodeForm Form, bool Anchored);

/// <summary>How a piece of YAML is written. The default is <see cref="Plain"/>.</summary>
internal enum NodeForm
{
    /// <summary>A value without quotes, or none at all.</summary>
    Plain = 0,
    /// <summary>Text in single quotes.</summary>
    SingleQuoted,
    /// <summary>Text in double quotes.</summary>
    DoubleQuoted,
    /// <summary>Text over several lines after | or &gt;.</summary>
    Lines,
    /// <summary>Keys or a list by indentation.</summary>
    Block,
    /// <summary>Keys in braces or a list in brackets.</summary>
    Flow,
}
