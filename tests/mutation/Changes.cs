using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlantWatch.Mutation;

/// <summary>What else an expression might have said: the slips that people make.</summary>
internal static class Changes
{
    private static readonly Dictionary<SyntaxKind, (SyntaxKind Kind, string Sign)[]> Binary = new()
    {
        [SyntaxKind.LessThanExpression] = [(SyntaxKind.LessThanOrEqualExpression, "<="), (SyntaxKind.GreaterThanOrEqualExpression, ">=")],
        [SyntaxKind.LessThanOrEqualExpression] = [(SyntaxKind.LessThanExpression, "<"), (SyntaxKind.GreaterThanExpression, ">")],
        [SyntaxKind.GreaterThanExpression] = [(SyntaxKind.GreaterThanOrEqualExpression, ">="), (SyntaxKind.LessThanOrEqualExpression, "<=")],
        [SyntaxKind.GreaterThanOrEqualExpression] = [(SyntaxKind.GreaterThanExpression, ">"), (SyntaxKind.LessThanExpression, "<")],
        [SyntaxKind.EqualsExpression] = [(SyntaxKind.NotEqualsExpression, "!=")],
        [SyntaxKind.NotEqualsExpression] = [(SyntaxKind.EqualsExpression, "==")],
        [SyntaxKind.LogicalAndExpression] = [(SyntaxKind.LogicalOrExpression, "||")],
        [SyntaxKind.LogicalOrExpression] = [(SyntaxKind.LogicalAndExpression, "&&")],
        [SyntaxKind.AddExpression] = [(SyntaxKind.SubtractExpression, "-")],
        [SyntaxKind.SubtractExpression] = [(SyntaxKind.AddExpression, "+")],
        [SyntaxKind.MultiplyExpression] = [(SyntaxKind.DivideExpression, "/")],
        [SyntaxKind.DivideExpression] = [(SyntaxKind.MultiplyExpression, "*")],
        [SyntaxKind.BitwiseOrExpression] = [(SyntaxKind.BitwiseAndExpression, "&")],
    };

    private static readonly Dictionary<string, string> Names = new()
    {
        ["Any"] = "All", ["All"] = "Any", ["First"] = "Last", ["Last"] = "First", ["FirstOrDefault"] = "LastOrDefault", ["Min"] = "Max", ["Max"] = "Min",
        ["OrderBy"] = "OrderByDescending", ["OrderByDescending"] = "OrderBy", ["Earlier"] = "Later", ["Later"] = "Earlier",
    };

    public static IEnumerable<ExpressionSyntax> Of(ExpressionSyntax was) => was switch
    {
        BinaryExpressionSyntax binary when Binary.TryGetValue(binary.Kind(), out var signs) => signs.Select(s => Parse($"{binary.Left} {s.Sign} {binary.Right}")),
        BinaryExpressionSyntax binary when binary.IsKind(SyntaxKind.CoalesceExpression) => [binary.Right],
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.LogicalNotExpression } not => [not.Operand],
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression } minus => [minus.Operand],
        IsPatternExpressionSyntax pattern => [Parse($"!({pattern})")],
        WithExpressionSyntax with => [with.Expression],
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name: IdentifierNameSyntax name } member } call when Names.TryGetValue(name.Identifier.Text, out var other) =>
            [call.WithExpression(member.WithName(SyntaxFactory.IdentifierName(other)))],
        LiteralExpressionSyntax literal => OfLiteral(literal),
        InterpolatedStringExpressionSyntax => [Parse("\"\"")],
        _ => [],
    };

    private static IEnumerable<ExpressionSyntax> OfLiteral(LiteralExpressionSyntax literal) => literal.Kind() switch
    {
        SyntaxKind.TrueLiteralExpression => [Parse("false")],
        SyntaxKind.FalseLiteralExpression => [Parse("true")],
        SyntaxKind.StringLiteralExpression when literal.Token.ValueText.Length > 0 => [Parse("\"\"")],
        SyntaxKind.NumericLiteralExpression => [Parse($"({literal} + 1)")],
        _ => [],
    };

    private static ExpressionSyntax Parse(string text) => SyntaxFactory.ParseExpression(text);
}
