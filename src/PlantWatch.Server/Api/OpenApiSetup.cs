using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>The description of the interface for machines, at /openapi/v1.json.</summary>
internal static class OpenApiSetup
{
    /// <summary>Adds the description.</summary>
    public static IServiceCollection AddPlantWatchOpenApi(this IServiceCollection services) => services.AddOpenApi("v1", options =>
    {
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "PlantWatch", Version = "v1",
                Description = "Pool water: live readings, manual checks, trust, alarms. Times are ISO 8601 in UTC; chlorine is in mg/L as Cl2, alkalinity and hardness in mg/L as CaCO3.",
            };
            // The address it was asked at says nothing about how others reach it.
            document.Servers = [];
            return Task.CompletedTask;
        });
        options.AddSchemaTransformer((schema, context, _) =>
        {
            var type = Nullable.GetUnderlyingType(context.JsonTypeInfo.Type) ?? context.JsonTypeInfo.Type;
            if (type.IsEnum) (schema.Type, schema.Enum) = (JsonSchemaType.String, [.. WordEnums.Of(type).Select(word => JsonValue.Create(word))]);
            if (context.JsonTypeInfo.Type != typeof(Instant) && context.JsonTypeInfo.Type != typeof(Instant?)) return Task.CompletedTask;
            // Written as text by its own converter, which the generator cannot look into.
            (schema.Type, schema.Format, schema.Properties) = (JsonSchemaType.String, "date-time", null);
            return Task.CompletedTask;
        });
    });

    /// <summary>Answers at /openapi/v1.json.</summary>
    public static WebApplication MapPlantWatchOpenApi(this WebApplication app)
    {
        app.MapOpenApi("/openapi/{documentName}.json");
        return app;
    }
}
