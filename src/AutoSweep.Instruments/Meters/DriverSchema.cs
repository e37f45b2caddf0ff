using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using AutoSweep.Instruments.Files;

namespace AutoSweep.Instruments.Meters;

/// <summary>The JSON schema of driver files, made from the types that read them.</summary>
public static class DriverSchema
{
    // Relaxed only so that comments in the schema stay readable; it is a file, not part of a page.
    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema's text, as <c>drivers/driver.schema.json</c> holds it.</summary>
    public static string Text => Generate().ToJsonString(Layout) + "\n";

    private static JsonObject Generate()
    {
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "AutoSweep meter driver",
        };
        var exported = StrictJson.Options.GetJsonSchemaAsNode(typeof(MeterDriver), new() { TreatNullObliviousAsNonNullable = true }).AsObject();
        foreach (var (name, node) in exported)
            schema[name] = node?.DeepClone();
        return schema;
    }
}
