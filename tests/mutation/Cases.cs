using System.Reflection;

namespace PlantWatch.Mutation;

/// <summary>A test with its arguments, found by its attributes and called by reflection: a process that stays runs it in microseconds.</summary>
internal sealed class Case(MethodInfo method, object?[] arguments, int number)
{
    public string Name => $"{method.DeclaringType!.Name}.{method.Name}#{number}";

    /// <summary>True when it passes.</summary>
    public bool Passes()
    {
        try
        {
            var instance = method.IsStatic ? null : Activator.CreateInstance(method.DeclaringType!);
            using var end = instance as IDisposable;
            if (method.Invoke(instance, arguments) is Task task) task.GetAwaiter().GetResult();
            return true;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            return false;
        }
    }

    /// <summary>All of an assembly's whose class lies in one of the spaces.</summary>
    public static List<Case> Of(Assembly tests, IReadOnlyList<string> spaces) =>
    [
        .. tests.GetTypes().Where(t => !t.IsAbstract && spaces.Any(s => t.Namespace?.StartsWith(s, StringComparison.Ordinal) == true))
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static))
            .Where(m => m.GetCustomAttributes().Any(a => a.GetType().Name is "FactAttribute" or "TheoryAttribute"))
            .SelectMany(Rows),
    ];

    private static IEnumerable<Case> Rows(MethodInfo method)
    {
        if (method.GetParameters().Length == 0) return [new(method, [], 0)];
        var rows = method.GetCustomAttributes().Where(a => a.GetType().GetMethod("GetData") is not null)
            .SelectMany(a => (IEnumerable<object?[]>)a.GetType().GetMethod("GetData")!.Invoke(a, [method])!);
        return rows.Select((row, i) => new Case(method, Fitting(method, row), i));
    }

    // What an attribute cannot say exactly (an int for a double, a default left out) is fitted as the runner does.
    private static object?[] Fitting(MethodInfo method, object?[] row) =>
        [.. method.GetParameters().Select((p, i) => i < row.Length ? Fit(row[i], p.ParameterType) : p.DefaultValue)];

    private static object? Fit(object? value, Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        return value is IConvertible && value.GetType() != plain && plain.IsPrimitive ? Convert.ChangeType(value, plain, System.Globalization.CultureInfo.InvariantCulture) : value;
    }
}
