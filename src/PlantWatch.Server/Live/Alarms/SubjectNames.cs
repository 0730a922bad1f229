using PlantWatch.Core.Plans;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What people call the thing that an alarm is about.</summary>
internal static class SubjectNames
{
    /// <summary>The name of a subject among these circuits; the subject itself where no plan knows it any more.</summary>
    /// <remarks>Plants call every pH probe "pH": away from its pool the name needs the pool, and a limit watches one quantity of a pool.</remarks>
    public static string Of(IReadOnlyCollection<CircuitPlan> plans, string subject, Wording words)
    {
        var (head, quantity) = subject.Split('/') is [var first, var second] ? (first, second) : (subject, null);
        string? PoolName(string? id) => plans.SelectMany(p => p.Pools).FirstOrDefault(p => p.Id == id)?.Name;
        if (PoolName(head) is { } pool) return quantity is null ? pool : $"{pool}, {words.Find($"name.{quantity}")}";
        var (id, name, home) = Things(plans).FirstOrDefault(t => t.Id == head);
        return id is null ? subject : PoolName(home) is { } of && !name.Contains(of, StringComparison.OrdinalIgnoreCase) ? $"{of}, {name}" : name;
    }

    private static IEnumerable<(string Id, string Name, string? PoolId)> Things(IEnumerable<CircuitPlan> plans) => plans.SelectMany(p =>
        p.Probes.Select(x => (x.Id, x.Name, x.PoolId)).Concat(p.Pumps.Select(x => (x.Id, x.Name, x.PoolId)))
            .Concat(p.Filters.Select(x => (x.Id, x.Name, (string?)null))).Concat(p.Reagents.Select(x => (x.Id, x.Name, (string?)null))).Concat(p.Instruments.Select(x => (x.Id, x.Name, (string?)null))).Concat(p.Products.Select(x => (x.Id, x.Name, (string?)null))).Concat(p.Telling.Channels.Select(c => (c.Id, c.Name.Length > 0 ? c.Name : c.Id, (string?)null))).Append((p.Id, p.Name, null)));
}
