using Microsoft.CodeAnalysis;

namespace PlantWatch.Mutation;

/// <summary>One place changed in one way.</summary>
/// <param name="Id">Its number: what the switch is set to.</param>
/// <param name="File">File, from the project's folder.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="What">What was there and what is there instead.</param>
internal sealed record Mutant(int Id, string File, int Line, string What)
{
    /// <summary>Marks its node in the tree, so that an error of the compiler can be laid at its door.</summary>
    public const string Mark = "mutant";

    /// <summary>The mark of this one.</summary>
    public SyntaxAnnotation Annotation => new(Mark, Id.ToString(System.Globalization.CultureInfo.InvariantCulture));
}
