namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>How a file indents, as its first keys show; two columns where they show nothing.</summary>
internal static class YamlStyle
{
    private const int Usual = 2;

    /// <summary>Columns that keys within keys are further in.</summary>
    public static int Step(YamlText text, PlantMapping root) => Offset<PlantMapping>(text, root) is > 0 and var step ? step : Usual;

    /// <summary>Columns that the dashes of a list are further in than its key; some write them below the key itself.</summary>
    public static int Dash(YamlText text, PlantMapping root) => Offset<PlantList>(text, root) ?? Usual;

    private static int? Offset<T>(YamlText text, PlantNode node) where T : PlantNode => node switch
    {
        PlantMapping { At.Form: NodeForm.Block } m => m.Entries.Select(e => e.Value is T { At.Form: NodeForm.Block } ? text.Column(e.Value.At.Start) - text.Column(e.KeyAt.Start) : Offset<T>(text, e.Value))
            .FirstOrDefault(found => found is not null),
        PlantList { At.Form: NodeForm.Block } l => l.Items.Select(i => Offset<T>(text, i)).FirstOrDefault(found => found is not null),
        _ => null,
    };
}
