using AutoSweep.Core;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Benches;

/// <summary>The bench file is strict.</summary>
public class BenchFileTests
{
    [Fact]
    public void What_is_written_is_read_back()
    {
        using var folder = new TemporaryFolder();
        var text = BenchFile.Text(TestBench.Small());
        Assert.Equal(text, BenchFile.Text(BenchFile.Read(folder.Write("bench.json", text))));
    }

    [Theory]
    [InlineData("\"seed\": 3,", "\"seed\": 3,\n  \"sead\": 3,", "sead")]
    [InlineData("\"seed\": 3,", "", "seed")]
    [InlineData("\"seed\": 3,", "\"seed\": 3, \"seed\": 4,", "seed")]
    [InlineData("\"format\": 1,", "\"format\": 2,", "format 2")]
    [InlineData("\"gain\": 20,", "\"gain\": 0,", "gain 0")]
    [InlineData("{\"number\":2,", "{\"number\":1,", "twice")]
    [InlineData("\"arrangement\":\"series\"", "\"arrangement\":\"parallel\"", "arrangement")]
    [InlineData("{\"output\":5}", "{\"output\":99}", "output 99")]
    public void A_fault_in_the_file_is_named(string from, string to, string named)
    {
        using var folder = new TemporaryFolder();
        var text = BenchFile.Text(TestBench.Small());
        Assert.Contains(from, text, StringComparison.Ordinal);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        var path = folder.Write("bench.json", text[..at] + to + text[(at + from.Length)..]);
        var fault = Assert.Throws<BenchFaultException>(() => BenchFile.Read(path));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains(named, fault.Found, StringComparison.Ordinal);
    }
}
