using System.Text.Json;
using System.Text.Json.Serialization;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Files;

/// <summary>Reads a JSON file that must hold exactly the fields of a type: a misspelt field is a fault, not silence.</summary>
internal static class StrictJson
{
    /// <summary>The rules: camel case, no unknown, repeated or missing fields, no comments.</summary>
    public static JsonSerializerOptions Options { get; } = NewOptions();

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="what">What it is, for the message: "driver file".</param>
    /// <exception cref="BenchFaultException">Missing, not readable, or not in the format: names the field and the line.</exception>
    public static T Read<T>(string path, string what)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(File.ReadAllBytes(path), Options) ?? throw new JsonException("The file holds null.");
        }
        catch (JsonException exception)
        {
            throw new BenchFaultException(
                BenchFault.BadFile, $"the {what} {path}, {PlaceOf(exception)}: {ReasonOf(exception)}", ExpectedOf(exception), "Correct the file and start again.", exception);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(
                BenchFault.BadFile, $"the {what} {path} cannot be read: {exception.Message}", "a file that exists and that you may read", "Check the path.", exception);
        }
    }

    /// <summary>The fault for a value that the format allows and the meaning does not.</summary>
    public static BenchFaultException BadValue(string path, string what, string found, string expected) =>
        new(BenchFault.BadFile, $"the {what} {path}: {found}", expected, "Correct the file and start again.");

    private static JsonSerializerOptions NewOptions()
    {
        var options = new JsonSerializerOptions(JsonSerializerOptions.Strict)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            NumberHandling = JsonNumberHandling.Strict,
            Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
        };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private static string PlaceOf(JsonException exception) =>
        FormattableString.Invariant($"line {(exception.LineNumber ?? 0) + 1}, field {FieldOf(exception)}");

    private static string FieldOf(JsonException exception) => exception.Path is null or "$" ? "(the whole file)" : exception.Path.TrimStart('$', '.');

    // System.Text.Json tells the three cases apart only by its text, which names .NET types; a technician needs the field.
    private static string ReasonOf(JsonException exception) => exception.Message switch
    {
        var message when message.Contains("could not be mapped", StringComparison.Ordinal) => "a field that this format does not know",
        var message when message.Contains("missing required", StringComparison.Ordinal) => $"missing field {MissingIn(message)}",
        var message when message.Contains("could not be converted", StringComparison.Ordinal) => "a value of the wrong kind",
        var message => message.Split(" Path:")[0],
    };

    private static string ExpectedOf(JsonException exception) => exception.Message.Contains("could not be mapped", StringComparison.Ordinal)
        ? "only the fields that the schema lists; check the spelling"
        : "JSON as the schema describes it";

    private static string MissingIn(string message)
    {
        var names = message.IndexOf("including:", StringComparison.Ordinal);
        return names < 0 ? "" : message[(names + "including:".Length)..].Trim().TrimEnd('.').Replace('\'', '"');
    }
}
