using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;

namespace PlantWatch.Server.Api;

/// <summary>A sheet as it comes in: looked over for what is missing or too long, then made a sheet of Core.</summary>
internal static class SheetRequests
{
    // Two points, a third to look at, and room for mistakes to be named.
    private const int MostPoints = 8;

    public static IResult? Objection(SheetRequest request) =>
        Bounds.OfName("by", request.By) ?? Bounds.OfRemark("note", request.Note) ?? List("asFound", request.AsFound) ?? List("points", request.Points) ?? List("asLeft", request.AsLeft)
        ?? (request.Work?.Count > MostPoints ? Answers.Invalid("work", "field.too_many") : null);

    public static BenchSheet Sheet(SheetRequest request) => new()
    {
        StartedAt = request.StartedAt, EndedAt = request.EndedAt,
        AsFound = [.. (request.AsFound ?? []).Select(Point)], Points = [.. (request.Points ?? []).Select(Point)], AsLeft = [.. (request.AsLeft ?? []).Select(Point)],
    };

    public static ProbeWork Work(SheetRequest request) => (request.Work ?? []).Aggregate(ProbeWork.None, (all, one) => all | one);

    private static IResult? List(string field, IReadOnlyList<PointRequest>? points)
    {
        if (Bounds.OfList(field, points ?? [], MostPoints) is { } no) return no;
        for (var i = 0; i < points?.Count; i++)
        {
            var (point, place) = (points[i], $"{field}[{i}]");
            if (point.Celsius is null) return Answers.Invalid($"{place}.celsius", "field.required");
            if (point.Reading is null) return Answers.Invalid($"{place}.reading", "field.required");
            if (Bounds.OfName($"{place}.lot", point.Lot) is { } tooLong) return tooLong;
        }

        return null;
    }

    private static BenchPoint Point(PointRequest point) => new()
    {
        Buffer = point.Buffer, Quinhydrone = point.Quinhydrone, Label = point.Label, Celsius = point.Celsius!.Value, Reading = point.Reading!.Value,
        InMillivolts = point.InMillivolts, Source = point.Source, At = point.At, Lot = string.IsNullOrWhiteSpace(point.Lot) ? null : point.Lot.Trim(), Expires = point.Expires,
    };
}
