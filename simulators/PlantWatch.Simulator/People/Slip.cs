namespace PlantWatch.Simulator.People;

/// <summary>What tired people write down instead.</summary>
internal static class Slip
{
    /// <summary>The sheet with one slip of the pen; the same sheet where there is nothing to slip on.</summary>
    public static CheckSheet Of(CheckSheet sheet, Chance chance)
    {
        var free = sheet.Result("free_chlorine");
        var total = sheet.Result("total_chlorine");
        return (int)(chance.Even() * 3) switch
        {
            0 when free is { } f && total is { } t => With(sheet, ("free_chlorine", t), ("total_chlorine", f)),
            1 when sheet.Result("ph") is { } ph => With(sheet, ("ph", Swapped(ph))),
            _ when free is { } f => With(sheet, ("free_chlorine", Math.Round(f / 10, 2))),
            _ => sheet,
        };
    }

    // 7.42 written as 7.24.
    private static double Swapped(double ph)
    {
        var hundredths = (int)Math.Round(ph * 100);
        return ((hundredths / 100 * 100) + (hundredths % 10 * 10) + (hundredths / 10 % 10)) / 100.0;
    }

    private static CheckSheet With(CheckSheet sheet, params (string Measurand, double Value)[] changes) => sheet with
    {
        Results = [.. sheet.Results.Select(r => changes.Where(c => c.Measurand == r.Measurand).Select(c => r with { Value = c.Value }).FirstOrDefault() ?? r)],
    };
}
