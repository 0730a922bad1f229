using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.PlantFile.Editing;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>The plant file: read, tried and saved by people. No secret stands in it, so none leaves by it.</summary>
internal static class PlantFileApi
{
    private const int MostEdits = 500;

    // Text of the largest plant file, where every character is written by its number in JSON.
    private const long LargestRequest = 6 * PlantFileReader.LargestBytes + 4096;

    private static readonly YamlEditor Editor = new(SchemaShape.KeysAt);

    public static void MapPlantFile(this RouteGroupBuilder api)
    {
        api.MapGet("/plant-file", (HttpResponse response, PlantFileDesk desk, PlantFileWatcher watcher, PlantWatchOptions options) => Show(response, desk, watcher, options)).Produces<PlantFileView>();
        api.MapGet("/plant-file/schema", () => Results.Text(SchemaCheck.EmbeddedText("plant.schema.json"), "application/schema+json"));
        api.MapPost("/plant-file/check", Check).WithMetadata(new RequestSizeLimitAttribute(LargestRequest)).Produces<PlantFileCheck>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapPut("/plant-file", SaveAsync).WithMetadata(new RequestSizeLimitAttribute(LargestRequest)).Produces<PlantFileView>()
            .Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict).Produces<Problem>(StatusCodes.Status412PreconditionFailed);
    }

    private static IResult Show(HttpResponse response, PlantFileDesk desk, PlantFileWatcher watcher, PlantWatchOptions options)
    {
        var copy = desk.Read();
        var source = PlantFileSource.Read(options.PlantFile);
        response.Headers.ETag = $"\"{copy.Digest}\"";
        return Answers.Ok(new PlantFileView(
            Path.GetFileName(options.PlantFile), copy.Digest != PlantFileDesk.NoFile, InForce: source.Hash is not null && source.Hash == watcher.InForceHash, desk.IsWritable(),
            copy.Fault is { } fault ? Said(fault) : null, copy.Text, copy.Digest, TreeOf(copy.Text), copy.Digest == PlantFileDesk.NoFile ? [] : Problems(source.Understand())));
    }

    private static IResult Check(CheckPlantFile request, PlantFileDesk desk, PlantHost host)
    {
        var there = desk.Read();
        if (request.Text is null && there.Fault is { } fault) return Refuse(fault);
        if (request.Edits?.Count > MostEdits) return Answers.Invalid("edits", "field.too_many");
        var edits = (request.Edits ?? []).Select(EditOf).ToArray();
        if (Array.FindIndex(edits, e => e is null) is var hole and >= 0) return Answers.Invalid($"edits[{hole}]", "field.required");
        var outcome = Editor.Apply(request.Text ?? there.Text, edits!);
        var result = desk.Imagine(outcome.Text).Understand();
        return Answers.Ok(new PlantFileCheck(
            outcome.Text, TreeOf(outcome.Text), Problems(result), LineDiff.Between(there.Text, outcome.Text), Effects(host.Plan, result.Plan), Said(outcome, edits!)));
    }

    private static async Task<IResult> SaveAsync(
        SavePlantFile request, HttpRequest http, PlantFileDesk desk, PlantFileWatcher watcher, PlantWatchOptions options, CancellationToken cancellation)
    {
        if (http.Headers.IfMatch is not [{ Length: > 2 } match]) return Answers.Problem(StatusCodes.Status428PreconditionRequired, "Not possible", [Said("If-Match", "plant_file.needs_digest")]);
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } no) return no;
        if (string.IsNullOrWhiteSpace(request.Text)) return Answers.Invalid("text", "field.required");
        var problems = desk.Imagine(request.Text).Understand().Errors;
        if (problems.Count > 0) return Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", [.. problems.Select(p => new FieldSaid(p.Key, "plant_file.problem", p.ToString()))]);
        var signed = new PlanSigned(request.By.Trim(), string.IsNullOrWhiteSpace(request.Why) ? null : request.Why.Trim());
        return await desk.SaveAsync(request.Text, match.Trim('"'), signed, cancellation) is { } fault ? Refuse(fault) : Show(http.HttpContext.Response, desk, watcher, options);
    }

    private static IResult Refuse(DeskFault fault) =>
        Answers.Problem(fault == DeskFault.ChangedMeanwhile ? StatusCodes.Status412PreconditionFailed : StatusCodes.Status409Conflict, "Not possible", [Said(fault)]);

    private static FieldSaid Said(DeskFault fault) => Said("", $"plant_file.{Wording.Key(fault)}");

    private static FieldSaid Said(string field, string code) => new(field, code, Reader.Words.Find(code));

    private static FieldSaid? Said(EditOutcome outcome, YamlEdit[] edits)
    {
        if (outcome.Fault == EditFault.None) return null;
        var said = Said(edits[outcome.Index].Path, $"plant_file.edit_{Wording.Key(outcome.Fault)}");
        return outcome.Line == 0 ? said : said with { Text = $"line {outcome.Line}: {said.Text}" };
    }

    private static YamlEdit? EditOf(PlantFileEdit? edit) => edit?.Path is not { } path ? null : new(edit.Do switch
    {
        "set" => YamlDo.Set,
        "add" => YamlDo.Add,
        "remove" => YamlDo.Remove,
        _ => YamlDo.Unknown,
    }, path, edit.Value);

    private static JsonNode? TreeOf(string text) => YamlTree.Read(text, new Complaints())?.ToJson();

    private static IReadOnlyList<PlantFileProblem> Problems(PlantFileResult result) => [.. result.Errors.Select(e => new PlantFileProblem(e.Line, e.Key, e.Message, e.File))];

    private static IReadOnlyList<Said> Effects(PlantPlan? now, PlantPlan? next) =>
        next is null ? [] : Reader.Words.Say(PlanChange.Between(now ?? new PlantPlan(new SitePlan("", "UTC"), [], []), next));
}
