using System.Text.Json;
using System.Text.Json.Nodes;
using AutoSweep.Core;
using AutoSweep.Core.StrictJson;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Meters;

public sealed class DriverFileTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("autosweep-drivers-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_folder_with_a_driver_file_is_a_driver()
    {
        Write("small", Json());
        _folder.CreateSubdirectory("not-a-driver");
        var library = new DriverLibrary(_folder.FullName);
        Assert.Equal(["small"], library.Names);
        Assert.Equal("a meter for tests", library.Read("small").Title);
    }

    [Fact]
    public void A_driver_that_is_not_there_is_a_fault_that_lists_those_that_are()
    {
        Write("small", Json());
        var fault = Assert.Throws<BenchFaultException>(() => new DriverLibrary(_folder.FullName).Read("smal"));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains("small", fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_field_is_named_with_its_line_and_the_nearest_known_one()
    {
        var json = Json();
        json["level"]!["overrange"] = 1.2;
        var fault = FaultOf(json);
        Assert.Matches("line [0-9]+: level.overrange: an unknown field", fault.Found);
        Assert.Contains("overRange", fault.WhatToDo, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Broken => new()
    {
        { "name", "\"other\"" },
        { "identity", "[]" },
        { "level.rangesVolts", "[1, 0.1]" },
        { "level.rangesVolts", "[]" },
        { "level.rangeArguments", "[\"0\", \"1\"]" },
        { "level.rangeArguments", "[\"0\", \"1\", \"1\"]" },
        { "level.rangeArguments", "[\"0\", \"1\", \"2\\n*RST\"]" },
        { "level.overRange", "0.5" },
        { "level.bandwidths", "[]" },
        { "level.read", "\"READ?\\n\"" },
        { "level.read", "\"\"" },
        { "frequency.apertureSeconds", "\"fast\"" },
        { "frequency.settleSeconds", "-1" },
        { "link.terminator", "\"CR\"" },
        { "link.serial.parity", "\"mark\"" },
        { "beep.command", "\"SYST:BEEP {volume}\"" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_value_that_makes_no_sense_is_named(string field, string value)
    {
        var json = Json();
        var path = field.Split('.');
        var parent = path[..^1].Aggregate((JsonNode)json, (node, name) => node[name]!);
        parent[path[^1]] = JsonNode.Parse(value);
        Assert.Contains(field, FaultOf(json).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_field_is_named()
    {
        var json = Json();
        json["level"]!.AsObject().Remove("read");
        Assert.Contains("\"read\" is missing", FaultOf(json).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_driver_that_measures_nothing_is_refused()
    {
        var json = Json();
        json.Remove("level");
        json.Remove("frequency");
        Assert.Contains("none of level, frequency and capacitance", FaultOf(json).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_driver_may_measure_capacitance_only()
    {
        Write("small", JsonSerializer.SerializeToNode(Drivers.CapacitanceOnly, StrictJsonOptions.Shared)!.AsObject());
        Assert.Null(new DriverLibrary(_folder.FullName).Read("small").Level);
    }

    [Theory]
    [InlineData("accuracy", "source", "\"\"")]
    [InlineData("reply", "statusField", "2")]
    [InlineData("accuracy", "shareOfReading", "5")]
    public void A_capacitance_section_is_checked_too(string section, string field, string value)
    {
        var json = JsonSerializer.SerializeToNode(Drivers.CapacitanceOnly, StrictJsonOptions.Shared)!.AsObject();
        json["capacitance"]![section]![field] = JsonNode.Parse(value);
        Assert.Contains("capacitance." + section, FaultOf(json).Found, StringComparison.Ordinal);
    }

    private static JsonObject Json() => JsonSerializer.SerializeToNode(Drivers.Small, StrictJsonOptions.Shared)!.AsObject();

    private BenchFaultException FaultOf(JsonObject json)
    {
        Write("small", json);
        var fault = Assert.Throws<BenchFaultException>(() => new DriverLibrary(_folder.FullName).Read("small"));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        return fault;
    }

    private void Write(string name, JsonObject json) =>
        File.WriteAllText(Path.Combine(_folder.CreateSubdirectory(name).FullName, "driver.json"),
            json.ToJsonString(StrictJsonOptions.Shared));
}
