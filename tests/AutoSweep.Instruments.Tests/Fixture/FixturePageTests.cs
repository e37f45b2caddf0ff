using System.Text.RegularExpressions;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments.Tests.Fixture;

/// <summary>What docs/fixture-protocol.md shows is what happens.</summary>
public sealed partial class FixturePageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "fixture-protocol.md"));

    [Fact]
    public async Task The_conversation_on_the_page_is_the_one_that_the_product_has()
    {
        var wire = Wire().Matches(Page).Select(match => match.Value).ToArray();
        var answers = new Queue<string>(wire.Where(line => line[0] == '<').Select(line => line[2..] + "\n"));
        await using var link = new FakeLink { Answer = line => line.EndsWith('?') ? answers.Dequeue() : null };
        var time = new ObservedTime();
        await using (var fixture = await ScpiRelayFixture.OpenAsync(
            new(link, new(), time, NullLogger.Instance), Calibrations.Ideal, TimeSpan.FromSeconds(10), time, NullLogger.Instance, default))
        {
            await fixture.SetAsync(Capacitance.FromNanofarads(100.25), default);
            await fixture.SetAsync(Capacitance.FromNanofarads(47.15), default);
        }

        Assert.Equal(wire.Where(line => line[0] == '>').Select(line => line[2..]), link.Lines);
    }

    [Fact]
    public void The_calibration_on_the_page_is_one_that_the_product_reads()
    {
        var file = Path.GetTempFileName();
        File.WriteAllText(file, Json().Match(Page).Groups[1].Value);
        Assert.Equal(16, FixtureCalibration.Read(file).Relays.Count);
        File.Delete(file);
    }

    [GeneratedRegex("^[<>] .+$", RegexOptions.Multiline)]
    private static partial Regex Wire();

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Json();
}
