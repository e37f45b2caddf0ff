using System.Globalization;
using System.Text;
using System.Text.Json;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Generator;

/// <summary>docs/generator-profiles.md says what the program does. AUTOSWEEP_ACCEPT=1 rewrites what is made from the program.</summary>
public class GeneratorProfilesPageTests
{
    private static readonly MarkedPage Page = new("docs/generator-profiles.md");

    [Fact]
    public void The_table_of_fields_is_the_schemas() => Page.AssertPart("fields", FieldTable());

    [Fact]
    public void The_worked_example_reads_and_gives_the_tones_that_the_page_works_out()
    {
        var profile = GeneratorProfileFile.Parse(Page.CodeAfter("example"), "example.json");
        Assert.Equal([352.0, 704.0, 920.75], profile.Outputs.Select(output => Math.Round(profile.ToneOf(output).Hertz, 2)));
    }

    [Fact]
    public void The_message_on_the_page_is_the_one_that_the_reader_gives()
    {
        var mistyped = Page.CodeAfter("example").Replace("\"gearTrain\": \"high\"", "\"gearTrain\": \"hihg\"", StringComparison.Ordinal);
        var fault = Assert.Throws<BenchFaultException>(() => GeneratorProfileFile.Parse(mistyped, "example.json"));
        Page.AssertCodeAfter("message", fault.Message);
    }

    [Fact]
    public void Every_shipped_profile_is_on_the_page_with_its_numbers() => Assert.All(GeneratorProfileLibrary.Names, name =>
    {
        var profile = GeneratorProfileLibrary.Open(name);
        var swept = profile.FilteredOutputs.Select(output => output.Number).ToList();
        Assert.Contains($"| `{name}` | {profile.Outputs.Count} | {swept[0]} to {swept[^1]} |", Page.Text, StringComparison.Ordinal);
    });

    private static string FieldTable()
    {
        using var schema = JsonDocument.Parse(GeneratorProfileFile.Schema);
        var table = new StringBuilder("| Field | | Value | Meaning |\n| --- | --- | --- | --- |\n");
        AddRows(table, schema.RootElement, "");
        return table.ToString();
    }

    private static void AddRows(StringBuilder table, JsonElement schema, string path)
    {
        var required = schema.GetProperty("required").EnumerateArray().Select(name => name.GetString()).ToList();
        foreach (var field in schema.GetProperty("properties").EnumerateObject())
        {
            var need = required.Contains(field.Name) ? "required" : "optional";
            var meaning = field.Value.GetProperty("description");
            table.Append(CultureInfo.InvariantCulture, $"| `{path}{field.Name}` | {need} | {Value(field.Value)} | {meaning} |\n");
            AddInner(table, field.Value, path + field.Name);
        }
    }

    // A reference to what is on the page already (a variant's gear trains) adds no rows.
    private static void AddInner(StringBuilder table, JsonElement field, string path)
    {
        if (field.TryGetProperty("properties", out _))
            AddRows(table, field, path + ".");
        else if (field.TryGetProperty("items", out var item) && item.TryGetProperty("properties", out _))
            AddRows(table, item, path + "[].");
        else if (field.TryGetProperty("additionalProperties", out var entry) && entry.ValueKind == JsonValueKind.Object
            && entry.TryGetProperty("properties", out _))
            AddRows(table, entry, path + ".NAME.");
    }

    private static string Value(JsonElement field)
    {
        if (field.TryGetProperty("enum", out var words))
            return string.Join(", ", words.EnumerateArray().Select(word => $"`{word}`"));
        var type = field.GetProperty("type");
        var kind = (type.ValueKind == JsonValueKind.Array ? type[0] : type).GetString()!;
        return field.TryGetProperty("minimum", out var least) ? $"{kind}, {least} to {field.GetProperty("maximum")}" : kind;
    }
}
