using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace AutoSweep.Core.StrictJson;

/// <summary>How every hand-written JSON file is read, and how its schema is made.</summary>
public static class StrictJsonOptions
{
    /// <summary>Strict reading, camelCase fields and words, indented writing. Read-only.</summary>
    public static JsonSerializerOptions Shared { get; } = Create();

    /// <summary>How such a file is written by a program: as <see cref="Shared"/>, with a field that says nothing left out. Read-only.</summary>
    public static JsonSerializerOptions Written { get; } = CreateWritten();

    private static JsonSerializerOptions CreateWritten()
    {
        var options = new JsonSerializerOptions(Shared) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };
        options.MakeReadOnly();
        return options;
    }

    private static JsonSerializerOptions Create()
    {
        var options = new JsonSerializerOptions(JsonSerializerOptions.Strict)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
            WriteIndented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // Files for people, never part of a web page.
            Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
        };
        options.MakeReadOnly();
        return options;
    }
}
