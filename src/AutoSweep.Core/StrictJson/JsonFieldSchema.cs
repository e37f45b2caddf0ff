using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;

namespace AutoSweep.Core.StrictJson;

/// <summary>The JSON schema of a hand-written file, made from the record that reads it.</summary>
/// <remarks>
/// So an editor knows what the reader knows. JSON Schema draft 2020-12; descriptions and limits are the record's own attributes.
/// </remarks>
public static class JsonFieldSchema
{
    /// <summary>The schema's text, ending in a line feed.</summary>
    /// <typeparam name="T">The record that the file describes.</typeparam>
    /// <param name="title">What the file is, in a few words.</param>
    public static string Of<T>(string title)
    {
        var exporter = new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Describe };
        var schema = StrictJsonOptions.Shared.GetJsonSchemaAsNode(typeof(T), exporter).AsObject();
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", title);
        return schema.ToJsonString(StrictJsonOptions.Shared) + "\n";
    }

    private static JsonNode Describe(JsonSchemaExporterContext context, JsonNode node)
    {
        if (node is not JsonObject schema || context.PropertyInfo is not { } property)
            return node;
        var words = property.AttributeProvider?.GetCustomAttributes(typeof(DescriptionAttribute), true).FirstOrDefault();
        if (words is DescriptionAttribute description && context.Path.Length >= 2 && context.Path[^2] == "properties")
            schema.Insert(0, "description", description.Description);
        if (JsonLeaf.RangeOf(property) is { } range)
            (schema["minimum"], schema["maximum"]) = (JsonLeaf.Limits(range).Least, JsonLeaf.Limits(range).Most);
        return schema;
    }
}
