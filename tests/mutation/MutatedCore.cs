using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlantWatch.Mutation;

/// <summary>Core with all its mutants in it, compiled once. What the compiler refuses is dropped.</summary>
internal static class MutatedCore
{
    private const string SwitchSource = """
        namespace PlantWatch.Mutation;
        public static class Switch
        {
            public static int Active = -1;
            public static long Count, Most = long.MaxValue;
            public static readonly bool[] Seen = new bool[200_000], Ever = new bool[200_000];
            public static readonly System.Collections.Generic.List<int> AtStart = new();
            public static bool On(int mutant)
            {
                Seen[mutant] = true;
                if (!Ever[mutant])
                {
                    Ever[mutant] = true;
                    if (System.Environment.StackTrace.Contains("..cctor()")) lock (AtStart) AtStart.Add(mutant);
                }
                if (++Count > Most) throw new System.TimeoutException();
                return mutant == Active;
            }
        }
        """;

    private static readonly CSharpParseOptions Parsing = new(LanguageVersion.Latest);

    /// <summary>Writes the assembly and says what is in it.</summary>
    public static List<Mutant> Write(string project, IReadOnlyList<string> folders, string to)
    {
        var trees = Sources(project).Select(f => CSharpSyntaxTree.ParseText(File.ReadAllText(f), Parsing, f)).ToList();
        for (var dropped = new HashSet<int>(); ;)
        {
            var mutants = new List<Mutant>();
            var next = 0;
            var changed = trees.Select(t => IsIn(t, project, folders, out var name) ? Mutated(t, name, ref next, dropped, mutants) : t).ToList();
            changed.Add(CSharpSyntaxTree.ParseText(SwitchSource, Parsing, "Switch.cs"));
            var compiled = Compile(changed).Emit(to);
            if (compiled.Success) return mutants;
            var before = dropped.Count;
            foreach (var error in compiled.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)) Drop(error, dropped);
            if (dropped.Count == before) throw new InvalidOperationException(compiled.Diagnostics.First(d => d.Severity == DiagnosticSeverity.Error).ToString());
        }
    }

    private static bool IsIn(SyntaxTree tree, string project, IReadOnlyList<string> folders, out string name)
    {
        var file = name = Path.GetRelativePath(project, tree.FilePath).Replace('\\', '/');
        return folders.Any(f => file.StartsWith(f, StringComparison.Ordinal));
    }

    private static SyntaxTree Mutated(SyntaxTree tree, string name, ref int next, HashSet<int> dropped, List<Mutant> mutants)
    {
        var mutator = new Mutator(name, next, dropped);
        var root = mutator.Visit(tree.GetRoot())!;
        next = mutator.Next;
        mutants.AddRange(mutator.Mutants);
        return CSharpSyntaxTree.Create((CSharpSyntaxNode)root, Parsing, tree.FilePath);
    }

    // An error lies at the door of the innermost mutant around it. Where none is, a mutant elsewhere in its member upset it: first those that give a variable are held to have done so.
    private static void Drop(Diagnostic error, HashSet<int> dropped)
    {
        var node = error.Location.SourceTree!.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
        var own = node.AncestorsAndSelf().FirstOrDefault(n => n.HasAnnotations(Mutant.Mark));
        List<SyntaxNode> all = own is not null ? [own] : [.. node.FirstAncestorOrSelf<MemberDeclarationSyntax>()?.DescendantNodes().Where(n => n.HasAnnotations(Mutant.Mark)) ?? []];
        var giving = all.Where(n => n.DescendantNodes().Any(d => d is SingleVariableDesignationSyntax)).ToList();
        foreach (var mark in (giving.Count > 0 ? giving : all).SelectMany(n => n.GetAnnotations(Mutant.Mark))) dropped.Add(int.Parse(mark.Data!, CultureInfo.InvariantCulture));
    }

    private static CSharpCompilation Compile(List<SyntaxTree> trees)
    {
        var platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        var references = platform.Where(p => p.StartsWith(Path.GetDirectoryName(typeof(object).Assembly.Location)!, StringComparison.Ordinal)).Select(p => MetadataReference.CreateFromFile(p));
        var options = new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable);
        return CSharpCompilation.Create("PlantWatch.Core", trees, references, options);
    }

    // What the build writes of itself, the usings among it, comes along.
    private static IEnumerable<string> Sources(string project) =>
        Directory.EnumerateFiles(project, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains("/bin/", StringComparison.Ordinal) && (!f.Contains("/obj/", StringComparison.Ordinal) || f.Contains("/obj/Release/net10.0/PlantWatch", StringComparison.Ordinal)))
            .Order(StringComparer.Ordinal);
}
