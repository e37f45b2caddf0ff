using AutoSweep.Core;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Reports;

public sealed class ShopSettingsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void A_settings_file_is_read()
    {
        var shop = Read("""
            { "name": "Some Bench", "address": ["1 Some Lane", "Somewhere"], "instruments": [{ "identity": "SN-17", "calibrated": "2026-02-03" }] }
            """);

        Assert.Equal("Some Bench", shop.Name);
        Assert.Equal(["1 Some Lane", "Somewhere"], shop.Address);
        Assert.Equal(new DateOnly(2026, 2, 3), Assert.Single(shop.Instruments).Calibrated);
        Assert.False(shop.Invented);
    }

    [Theory]
    [InlineData("""{ "address": [] }""", "name")]
    [InlineData("""{ "name": "a", "adress": [] }""", "adress")]
    [InlineData("""{ "name": "a", "instruments": [{ "identity": "x", "calibrated": "3.2.2026" }] }""", "calibrated")]
    public void A_typing_error_is_named_with_its_field(string text, string field)
    {
        var fault = Assert.Throws<BenchFaultException>(() => Read(text));

        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains(field, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_shipped_schema_is_the_one_that_the_reader_makes_from_its_record()
    {
        var file = Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "..", "src", "AutoSweep.Worker", "Reports", "shop.schema.json");
        if (Environment.GetEnvironmentVariable("AUTOSWEEP_ACCEPT") == "1")
            File.WriteAllText(file, ShopSettings.SchemaText);

        Assert.Equal(ShopSettings.SchemaText, File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "");
    }

    public void Dispose() => _folder.Dispose();

    private ShopSettings Read(string text)
    {
        File.WriteAllText(_folder.File("shop.json"), text);
        return ShopSettings.Read(_folder.File("shop.json"));
    }
}
