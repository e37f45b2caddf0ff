using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using AutoSweep.Core;

namespace AutoSweep.Sim.Benches;

/// <summary>Reads and writes a bench's strict JSON file and the calibration sheet beside it.</summary>
internal static class BenchFile
{
    private static readonly JsonSerializerOptions Strict = new(JsonSerializerOptions.Strict)
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <exception cref="BenchFaultException">The file is missing or breaks the format.</exception>
    public static BenchDefinition Read(string path) => BenchCheck.Checked(Parse<BenchDefinition>(path), path);

    public static CalibrationSheet ReadCalibration(string path) => Parse<CalibrationSheet>(path);

    public static string Text(BenchDefinition bench) => RowPerItem(JsonSerializer.SerializeToNode(bench, Strict)!.AsObject(), 0) + "\n";

    public static string Text(CalibrationSheet sheet) => RowPerItem(JsonSerializer.SerializeToNode(sheet, Strict)!.AsObject(), 0) + "\n";

    /// <summary>Where a bench's calibration sheet lies.</summary>
    public static string CalibrationPath(string benchPath) => Path.ChangeExtension(benchPath, ".calibration.json");

    private static T Parse<T>(string path)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(File.ReadAllText(path), Strict)
                ?? throw new JsonException("The file holds null.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new BenchFaultException(
                BenchFault.BadFile, $"{path}: {fault.Message}", "a file as docs/simulated-bench.md lists its fields",
                "Correct the file, or make a new bench with autosweep-sim make.", fault);
        }
    }

    // One output, step or relay a line: a bench of 91 outputs stays readable, and two versions can be compared line by line.
    private static string RowPerItem(JsonObject node, int depth)
    {
        var indent = new string(' ', 2 * (depth + 1));
        var fields = node.Select(field => $"{indent}\"{field.Key}\": {Value(field.Value, depth + 1)}");
        return "{\n" + string.Join(",\n", fields) + "\n" + new string(' ', 2 * depth) + "}";
    }

    private static string Value(JsonNode? value, int depth) => value switch
    {
        JsonArray { Count: > 0 } array when array[0] is JsonObject => Rows(array, depth),
        JsonObject inner when depth == 1 => RowPerItem(inner, depth),
        null => "null",
        _ => value.ToJsonString(Strict),
    };

    private static string Rows(JsonArray array, int depth)
    {
        var indent = new string(' ', 2 * (depth + 1));
        var rows = array.Select(item => indent + item!.ToJsonString(Strict));
        return "[\n" + string.Join(",\n", rows) + "\n" + new string(' ', 2 * depth) + "]";
    }
}
