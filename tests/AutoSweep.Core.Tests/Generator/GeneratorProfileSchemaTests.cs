using System.Text.Json;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Generator;

public class GeneratorProfileSchemaTests
{
    private const string File = "src/AutoSweep.Core/Generator/Profiles/generator-profile.schema.json";

    [Fact]
    public void The_shipped_schema_is_the_one_that_the_reader_makes_from_its_records()
    {
        if (Environment.GetEnvironmentVariable("AUTOSWEEP_ACCEPT") == "1")
            System.IO.File.WriteAllText(Repository.PathOf(File), GeneratorProfileFile.Schema);
        var shipped = System.IO.File.Exists(Repository.PathOf(File)) ? Repository.Text(File) : "";
        Assert.True(GeneratorProfileFile.Schema == shipped,
            $"{File} is out of date: run this test once with AUTOSWEEP_ACCEPT=1 and look at the difference.");
    }

    [Fact]
    public void The_schema_is_closed_and_describes_every_field()
    {
        using var schema = JsonDocument.Parse(GeneratorProfileFile.Schema);
        var outputs = schema.RootElement.GetProperty("properties").GetProperty("outputs").GetProperty("items");
        Assert.All([schema.RootElement, outputs], level =>
        {
            Assert.False(level.GetProperty("additionalProperties").GetBoolean());
            Assert.All(level.GetProperty("properties").EnumerateObject(),
                field => Assert.NotEmpty(field.Value.GetProperty("description").GetString()!));
        });
    }

    [Fact]
    public void The_schema_knows_the_limits_that_the_reader_enforces()
    {
        using var schema = JsonDocument.Parse(GeneratorProfileFile.Schema);
        var mains = schema.RootElement.GetProperty("properties").GetProperty("mainsHertz");
        Assert.Equal((45.0, 65.0), (mains.GetProperty("minimum").GetDouble(), mains.GetProperty("maximum").GetDouble()));
    }
}
