using System.Text.Json;
using System.Text.RegularExpressions;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Benches;

/// <summary>docs/simulated-bench.md against the program.</summary>
public partial class BenchPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Repository(), "docs", "simulated-bench.md"));

    [Fact]
    public void The_table_of_fields_lists_the_files_fields_and_no_others()
    {
        var table = Page[Page.IndexOf("## The bench file", StringComparison.Ordinal)..];
        var documented = Field().Matches(table).Select(match => match.Groups[1].Value)
            .SelectMany(name => name.StartsWith("….", StringComparison.Ordinal)
                ? new[] { "hands.survey[]" + name[1..], "hands.sweep[]" + name[1..] }
                : [name])
            .Where(name => !name.EndsWith("[]", StringComparison.Ordinal)).ToHashSet();
        var written = Fields(typeof(BenchDefinition)).ToHashSet();
        Assert.Equal([], written.Except(documented).Order());
        Assert.Equal([], documented.Except(written).Order());
    }

    [Fact]
    public async Task The_page_lists_every_option()
    {
        foreach (var command in new[] { "serve", "make", "score" })
        {
            var (_, help, _) = await SimProgram.RunAsync(command, "--help");
            foreach (var option in Option().Matches(help).Select(match => match.Value).Where(option => option != "--help"))
                Assert.Contains(option, Page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_page_tells_how_each_shipped_bench_was_made()
    {
        foreach (var name in ShippedBenchTests.Shipped)
        {
            Assert.Contains($"| `{name}` | ", Page, StringComparison.Ordinal);
            Assert.Contains($"`{string.Join(' ', ShippedBenchTests.Order(name))}`", Page, StringComparison.Ordinal);
        }
    }

    private static IEnumerable<string> Fields(Type type, string path = "")
    {
        foreach (var property in type.GetProperties().Where(property => property.CanWrite))
        {
            var name = path + JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            if (name == "truth.faults") continue; // The faults' own fields are listed once.
            var inner = property.PropertyType;
            if (inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
                (inner, name) = (inner.GetGenericArguments()[0], name + "[]");
            if (inner.Namespace != typeof(BenchDefinition).Namespace || inner.IsEnum) yield return name;
            else foreach (var field in Fields(inner, name + ".")) yield return field;
        }
    }

    private static string Repository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "AutoSweep.sln"))) folder = folder.Parent!;
        return folder.FullName;
    }

    [GeneratedRegex(@"(?<=^\|[^|\n]*)`([^`\n]+)`", RegexOptions.Multiline)]
    private static partial Regex Field();

    [GeneratedRegex("--[a-z][a-z-]+")]
    private static partial Regex Option();
}
