using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>One change of a YAML file, said by key and not by place in the text.</summary>
/// <param name="Do">What is done.</param>
/// <param name="Path">Where, such as <c>circuits[0].pools[1].volume_m3</c>.</param>
/// <param name="Value">What stands there afterwards; of <see cref="YamlDo.Add"/> the new item; null for <see cref="YamlDo.Remove"/>.</param>
internal sealed record YamlEdit(YamlDo Do, string Path, JsonNode? Value = null);

/// <summary>What an edit does. The default does nothing and is refused.</summary>
internal enum YamlDo
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Gives a key or an item its value; the key is added where it is not there.</summary>
    Set,
    /// <summary>Adds an item at the end of a list; the list is made where it is not there.</summary>
    Add,
    /// <summary>Takes out a key or an item, with the comments on its own lines.</summary>
    Remove,
}

/// <summary>Why an edit cannot be done in the text without harm. The text stays as it was.</summary>
internal enum EditFault
{
    /// <summary>None; the default.</summary>
    None = 0,
    /// <summary>The text is no YAML that can be read, or holds a key twice, a tag or an alias.</summary>
    NotReadable,
    /// <summary>The edit itself says nothing that can be done.</summary>
    NotSayable,
    /// <summary>There is nothing at that place, or not of that kind.</summary>
    NotThere,
    /// <summary>An anchor (&amp;name) stands there.</summary>
    Anchor,
    /// <summary>A brace or bracket there goes over several lines.</summary>
    FlowOverLines,
    /// <summary>Text over several lines (| or &gt;) stands there.</summary>
    TextOverLines,
    /// <summary>A tab indents the line.</summary>
    Tab,
    /// <summary>A group of keys or a list stands there by indentation, perhaps with comments: it is changed key by key.</summary>
    BlockThere,
    /// <summary>A comment stands where two lines would have to become one.</summary>
    CommentBetween,
    /// <summary>The file would hold nothing any more.</summary>
    WouldBeEmpty,
    /// <summary>What came of it did not read as what was meant, so it was left.</summary>
    NotSure,
}

/// <summary>A text after its edits, or why one of them was refused; then the text is the old one.</summary>
/// <param name="Text">The text.</param>
/// <param name="Fault">Why not; <see cref="EditFault.None"/> when all was done.</param>
/// <param name="Index">Which edit was refused, from 0.</param>
/// <param name="Line">The line in question, from 1; 0 when there is none.</param>
internal sealed record EditOutcome(string Text, EditFault Fault = EditFault.None, int Index = 0, int Line = 0);
