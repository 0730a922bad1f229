using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Paper;

/// <summary>One sheet is made at a time.</summary>
internal sealed class PaperTurn : Turn;
