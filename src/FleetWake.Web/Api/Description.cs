using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Records;
using FleetWake.Web.Api.Reading;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api;

/// <summary>The description of the API: what the library cannot see in the code by itself is added here, from the code.</summary>
internal static class Description
{
    public static void Describe(OpenApiOptions options)
    {
        options.AddDocumentTransformer((document, _, _) =>
        {
            Introduce(document);
            ListKindsOfABatch(document);
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            var metadata = context.Description.ActionDescriptor.EndpointMetadata;
            foreach (var field in metadata.OfType<QueryField>()) (operation.Parameters ??= []).Add(Parameter(field));
            if (metadata.OfType<RecordKind>().FirstOrDefault() is { } kind) ShowExample(operation, Example(kind));
            return Task.CompletedTask;
        });
        options.AddSchemaTransformer((schema, context, _) =>
        {
            // A refused record of a batch may have had no id to answer with.
            if (context.JsonTypeInfo.Type == typeof(Answer)) schema.Required?.Remove("id");
            if (context.JsonPropertyInfo?.AttributeProvider is MemberInfo member) DescribeMember(schema, context.JsonTypeInfo, member);
            else if (context.JsonTypeInfo.Kind == JsonTypeInfoKind.Object) schema.Description ??= Meanings.Of(context.JsonTypeInfo.Type);
            return Task.CompletedTask;
        });
    }

    /// <summary>The worked example of a kind as it is sent.</summary>
    public static JsonObject Example(RecordKind kind) =>
        JsonSerializer.SerializeToNode(kind.Example, kind.CommandType, LogbookJson.Options)!.AsObject();

    private static void Introduce(OpenApiDocument document)
    {
        document.Info = new OpenApiInfo
        {
            Title = "FleetWake",
            Version = "v1",
            Description = "Records of a fleet's propellers and what follows from them. Decision aid only: the owner's manual, local rules and a licensed technician win.",
        };
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes ??= new Dictionary<string, IOpenApiSecurityScheme>(StringComparer.Ordinal);
        document.Components.SecuritySchemes["key"] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "An API key of the operator: fw_…" };
        document.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference("key", document)] = [] }];
    }

    /// <summary>A record of a batch is a record of one kind, named by its "kind".</summary>
    private static void ListKindsOfABatch(OpenApiDocument document)
    {
        if (document.Components!.Schemas?.TryGetValue(nameof(BatchShape), out var batch) == true && batch.Properties!["records"] is OpenApiSchema records)
            records.Items = new OpenApiSchema { OneOf = [.. RecordKind.All.Select(kind => KindOfABatch(kind, document))] };
    }

    private static OpenApiSchema KindOfABatch(RecordKind kind, OpenApiDocument document) => new()
    {
        Title = kind.Name,
        AllOf =
        [
            new OpenApiSchema
            {
                Type = JsonSchemaType.Object,
                Required = new HashSet<string>(StringComparer.Ordinal) { "kind" },
                Properties = new Dictionary<string, IOpenApiSchema>(StringComparer.Ordinal)
                {
                    ["kind"] = new OpenApiSchema { Type = JsonSchemaType.String, Enum = [kind.Name] },
                },
            },
            new OpenApiSchemaReference(kind.CommandType.Name, document),
        ],
    };

    private static OpenApiParameter Parameter(QueryField field) => new()
    {
        Name = field.Name,
        In = ParameterLocation.Query,
        Description = field.Meaning,
        Required = field.Needed,
        Schema = field.Schema,
    };

    private static void ShowExample(OpenApiOperation operation, JsonObject example)
    {
        foreach (var body in operation.RequestBody?.Content?.Values ?? []) body.Example = example;
    }

    private static void DescribeMember(OpenApiSchema schema, JsonTypeInfo type, MemberInfo member)
    {
        // What has a name of its own in the description is described there, once, and not by whoever uses it first.
        if (type.Kind is JsonTypeInfoKind.None or JsonTypeInfoKind.Enumerable && !type.Type.IsEnum) schema.Description ??= Meanings.Of(member);
        if (member.GetCustomAttribute<OneOfAttribute>() is not { } oneOf) return;
        var words = schema.Items is OpenApiSchema items ? items : schema;
        words.Enum = [.. Words.All(oneOf.Words).Select(w => (JsonNode)w)];
    }
}
