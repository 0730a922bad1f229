using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlantWatch.Mutation;

/// <summary>Writes every change of a file beside what was there, behind a switch: the code is compiled once and changed by a number.</summary>
/// <param name="file">The file's name.</param>
/// <param name="first">Number of its first mutant.</param>
/// <param name="dropped">Those that would not compile.</param>
internal sealed class Mutator(string file, int first, HashSet<int> dropped) : CSharpSyntaxRewriter
{
    private int _next = first;

    /// <summary>What was changed.</summary>
    public List<Mutant> Mutants { get; } = [];

    /// <summary>Number of the first mutant after this file's, dropped ones counted.</summary>
    public int Next => _next;

    public override SyntaxNode? Visit(SyntaxNode? node) => node switch
    {
        // Constants by the language's rules: nothing behind a switch may stand there.
        AttributeListSyntax or PatternSyntax or SwitchLabelSyntax or EnumMemberDeclarationSyntax or ParameterSyntax or ThrowStatementSyntax or ThrowExpressionSyntax => node,
        FieldDeclarationSyntax field when field.Modifiers.Any(SyntaxKind.ConstKeyword) => node,
        LocalDeclarationStatementSyntax { IsConst: true } => node,
        InvocationExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.Text: "nameof" } } => node,
        IfStatementSyntax or WhileStatementSyntax or ConditionalExpressionSyntax => Negated(node),
        // A guard at the door names a programmer's error a line sooner; without it the line after throws.
        ExpressionStatementSyntax { Expression: InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "ThrowIfNull" } } } => node,
        ExpressionStatementSyntax statement => Omitted(statement),
        ExpressionSyntax expression => Changed(expression),
        _ => base.Visit(node),
    };

    private ExpressionSyntax Changed(ExpressionSyntax was)
    {
        var now = (ExpressionSyntax)base.Visit(was)!;
        foreach (var other in Changes.Of(was))
            if (Add(was, $"{Short(was)} -> {Short(other)}") is { } mutant)
                now = Parenthesized(SyntaxFactory.ConditionalExpression(On(mutant), Parenthesized(other), Parenthesized(now))).WithAdditionalAnnotations(mutant.Annotation);
        return now.WithTriviaFrom(was);
    }

    private SyntaxNode Negated(SyntaxNode was)
    {
        var now = base.Visit(was)!;
        var condition = Condition(was);
        if (Add(condition, $"{Short(condition)} -> not so") is not { } mutant) return now;
        ExpressionSyntax other = SyntaxFactory.BinaryExpression(SyntaxKind.ExclusiveOrExpression, On(mutant), Parenthesized(Condition(now)));
        return now.ReplaceNode(Condition(now), Parenthesized(other).WithAdditionalAnnotations(mutant.Annotation));
    }

    private SyntaxNode Omitted(ExpressionStatementSyntax was)
    {
        var now = (StatementSyntax)base.Visit(was)!;
        if (Add(was, $"{Short(was)} -> nothing") is not { } mutant) return now;
        return SyntaxFactory.IfStatement(SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, On(mutant)), now).WithAdditionalAnnotations(mutant.Annotation);
    }

    private Mutant? Add(SyntaxNode at, string what)
    {
        var mutant = new Mutant(_next++, file, at.GetLocation().GetLineSpan().StartLinePosition.Line + 1, what);
        if (dropped.Contains(mutant.Id)) return null;
        Mutants.Add(mutant);
        return mutant;
    }

    private static ExpressionSyntax Condition(SyntaxNode node) => node switch
    {
        IfStatementSyntax statement => statement.Condition,
        WhileStatementSyntax statement => statement.Condition,
        _ => ((ConditionalExpressionSyntax)node).Condition,
    };

    private static InvocationExpressionSyntax On(Mutant mutant) => (InvocationExpressionSyntax)SyntaxFactory.ParseExpression($"global::PlantWatch.Mutation.Switch.On({mutant.Id})");

    private static ParenthesizedExpressionSyntax Parenthesized(ExpressionSyntax expression) => SyntaxFactory.ParenthesizedExpression(expression);

    private static string Short(SyntaxNode node)
    {
        var text = string.Join(' ', node.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= 90 ? text : text[..87] + "...";
    }
}
