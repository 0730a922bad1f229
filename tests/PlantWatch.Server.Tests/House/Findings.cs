namespace PlantWatch.Server.Tests.House;

/// <summary>A rule of the house is broken by a list of places: whoever mends it wants the whole list.</summary>
internal static class Findings
{
    public static void None(IEnumerable<string> found, string rule)
    {
        string[] places = [.. found];
        if (places.Length > 0) Assert.Fail($"{rule}:\n  {string.Join("\n  ", places)}");
    }
}
