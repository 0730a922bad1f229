namespace PlantWatch.Core.Tests;

/// <summary>This test shows a numbered rule of docs/rules.md at work.</summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
public sealed class EvidenceAttribute(string rule) : Attribute
{
    /// <summary>The rule's number.</summary>
    public string Rule { get; } = rule;
}
