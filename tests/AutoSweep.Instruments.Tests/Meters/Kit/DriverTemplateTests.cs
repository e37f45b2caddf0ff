using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;

namespace AutoSweep.Instruments.Tests.Meters.Kit;

public sealed class DriverTemplateTests : IDisposable
{
    private readonly DirectoryInfo _parent = Directory.CreateTempSubdirectory("autosweep-new-");

    public void Dispose() => _parent.Delete(recursive: true);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task What_only_the_manual_can_fill_is_asked_for_and_the_schema_is_in_order(bool capacitance)
    {
        var folder = DriverTemplate.Make(_parent.FullName, "acme-m7", capacitance);
        var faults = (await DriverFolderCheck.CheckAsync(DriverFolder.Read(folder))).SelectMany(item => item.Faults).Select(fault => fault.Found).ToList();
        string[] asked = ["title:", "identity[0].maker:", ".setUp[0].command:", "source:", "commands.txt names no source", "no call"];
        Assert.All(asked, one => Assert.Contains(faults, fault => fault.Contains(one, StringComparison.Ordinal)));
        Assert.DoesNotContain(faults, fault => fault.Contains("unknown field", StringComparison.Ordinal) || fault.Contains("missing", StringComparison.Ordinal));
    }

    [Fact]
    public void An_editor_finds_the_schema_beside_the_file_or_above_it()
    {
        Assert.True(File.Exists(SchemaOf(DriverTemplate.Make(_parent.FullName, "alone", false))));
        File.WriteAllText(Path.Combine(_parent.FullName, "driver.schema.json"), DriverSchema.Text);
        var shared = DriverTemplate.Make(_parent.FullName, "among-others", false);
        Assert.Equal(Path.Combine(_parent.FullName, "driver.schema.json"), Path.GetFullPath(SchemaOf(shared)));
        Assert.False(File.Exists(Path.Combine(shared, "driver.schema.json")));
    }

    [Theory]
    [InlineData("Acme M7")]
    [InlineData("../acme")]
    [InlineData("acme--m7")]
    [InlineData("")]
    public void Another_kind_of_name_is_refused(string name) =>
        Assert.Equal(BenchFault.BadFile, Assert.Throws<BenchFaultException>(() => DriverTemplate.Make(_parent.FullName, name, false)).Kind);

    [Fact]
    public void A_folder_that_is_there_is_left_alone()
    {
        var folder = DriverTemplate.Make(_parent.FullName, "acme-m7", false);
        File.WriteAllText(Path.Combine(folder, "README.md"), "mine");
        Assert.Throws<BenchFaultException>(() => DriverTemplate.Make(_parent.FullName, "acme-m7", false));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, "README.md")));
    }

    private static string SchemaOf(string folder)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "driver.json")));
        return Path.Combine(folder, json.RootElement.GetProperty("$schema").GetString()!);
    }
}
