using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Hands;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Hands;

/// <summary>The hands at the LCR meter's clips, over their ears and eyes alone.</summary>
public class PartHandsTests
{
    private const int Rate = 10_000;

    [Fact]
    public async Task They_clip_each_part_until_it_is_beeped_for()
    {
        await using var bench = await ServedParts.StartAsync("parts");
        var first = await bench.NextAsync("clip");
        Assert.Equal(1, first.GetProperty("part").GetInt32());
        await bench.SayAsync("SYST:BEEP");
        await bench.NextAsync("unclip");
        Assert.Equal(2, (await bench.NextAsync("clip")).GetProperty("part").GetInt32());
    }

    [Fact]
    public async Task Their_events_never_tell_a_capacitance()
    {
        await using var bench = await ServedParts.StartAsync("parts");
        var clip = await bench.NextAsync("clip");
        Assert.Equal(["seconds", "event", "phase", "part"], clip.EnumerateObject().Select(field => field.Name));
    }

    [Fact]
    public async Task They_clip_the_pair_that_the_display_asks_for_and_take_it_off_at_the_beep()
    {
        await using var bench = await ServedParts.StartAsync("fit");
        await bench.NextAsync("begin");
        await bench.SayAsync("DISP:LINE \"parts 2 + 5\"");
        Assert.Equal("2+5", (await bench.NextAsync("clip")).GetProperty("note").GetString());
        await bench.SayAsync("SYST:BEEP");
        await bench.NextAsync("unclip");
        await bench.SayAsync("DISP:LINE \"7\"");
        Assert.Equal("7", (await bench.NextAsync("clip")).GetProperty("note").GetString());
    }

    [Fact]
    public async Task Another_text_on_the_display_changes_the_parts_without_a_beep()
    {
        await using var bench = await ServedParts.StartAsync("fit");
        await bench.SayAsync("DISP:LINE \"1 + 2\"");
        await bench.NextAsync("clip");
        await bench.SayAsync("DISP:LINE \"3 + 4\"");
        await bench.NextAsync("unclip");
        Assert.Equal("3+4", (await bench.NextAsync("clip")).GetProperty("note").GetString());
    }

    // The truth of the shipped bench `small`: output 9 peaks at 116878 pF; parts 4 and 12 are 115455 pF together, 3 and 11 are 398387 pF.
    // Its arrangement is series, so 1/V² is a parabola in 1/C: at 115455 pF the level is 98 % of its peak, at 398387 pF less than half.
    [Fact]
    public async Task What_was_clipped_last_for_an_output_is_in_its_filter_when_it_is_checked()
    {
        var peak = BenchFile.Read(BenchLocator.Bench("small")).Truth.Outputs.Single(output => output.Output == 9).Peak!;
        await using var bench = await ServedParts.StartAsync("fit,check", rate: 20);
        await FitAsync(bench, "14: P00001 + P00007", "SYST:BEEP");
        await FitAsync(bench, "9: P00003 + P00011", "SYST:BEEP;BEEP");
        await FitAsync(bench, "9: P00012 + P00004", "SYST:BEEP");
        await bench.SayAsync("DISP:LINE \"done\"");
        Assert.Equal("fit", (await bench.NextAsync("end")).GetProperty("phase").GetString());
        var clip = await bench.NextAsync("clip");
        Assert.Equal(("check", 9), (clip.GetProperty("phase").GetString(), clip.GetProperty("output").GetInt32()));
        Assert.InRange(await bench.LevelAsync(), 0.95 * peak.Millivolts, 1.01 * peak.Millivolts);
        await bench.BeepLevelMeterAsync();
        await bench.NextAsync("unclip");
        Assert.Equal(14, (await bench.NextAsync("clip")).GetProperty("output").GetInt32());
        await bench.BeepLevelMeterAsync();
        Assert.Equal("check", (await bench.NextAsync("end")).GetProperty("phase").GetString());
    }

    [Fact]
    public async Task Fitting_as_the_last_phase_outlives_the_word_done()
    {
        await using var bench = await ServedParts.StartAsync("fit");
        await bench.SayAsync("DISP:LINE \"done\"");
        await FitAsync(bench, "9: P00001 + P00002", "SYST:BEEP");
    }

    [Fact]
    public async Task A_pair_that_nobody_beeps_for_is_lifted_and_clipped_once_more()
    {
        await using var bench = await ServedParts.StartAsync("fit");
        await bench.SayAsync("DISP:LINE \"9: 1 + 2\"");
        Assert.Equal("1+2", (await bench.NextAsync("clip")).GetProperty("note").GetString());
        Assert.Equal("unclip", (await bench.NextAsync()).GetProperty("event").GetString());
        Assert.Equal("1+2", (await bench.NextAsync("clip")).GetProperty("note").GetString());
    }

    [Fact]
    public async Task An_old_capacitor_that_is_asked_for_goes_before_the_part_on_the_clips()
    {
        await using var bench = await ServedParts.StartAsync("parts");
        Assert.Equal(1, (await bench.NextAsync("clip")).GetProperty("part").GetInt32());
        await bench.SayAsync("DISP:LINE \"9: OLD\"");
        var old = await bench.NextAsync("clip");
        Assert.Equal((9, "old"), (old.GetProperty("output").GetInt32(), old.GetProperty("note").GetString()));
        await bench.SayAsync("SYST:BEEP");
        await bench.SayAsync("DISP:LINE \"14: OLD\"");
        Assert.Equal(14, (await bench.NextAsync("clip")).GetProperty("output").GetInt32());
        await bench.SayAsync("DISP:LINE \"done\"");
        Assert.Equal(2, (await bench.NextAsync("clip")).GetProperty("part").GetInt32());
    }

    [Fact]
    public async Task The_end_of_the_old_ones_does_not_end_the_fitting()
    {
        await using var bench = await ServedParts.StartAsync("fit,check");
        await bench.SayAsync("DISP:LINE \"9: OLD\"");
        await bench.NextAsync("clip");
        await bench.SayAsync("SYST:BEEP");
        await bench.SayAsync("DISP:LINE \"done\"");
        await FitAsync(bench, "9: P00001 + P00002", "SYST:BEEP");
        await bench.SayAsync("DISP:LINE \"done\"");
        Assert.Equal("fit", (await bench.NextAsync("end")).GetProperty("phase").GetString());
    }

    [Fact]
    public async Task With_nothing_soldered_there_is_nothing_to_check()
    {
        await using var bench = await ServedParts.StartAsync("fit,check");
        await FitAsync(bench, "1 + 2", "SYST:BEEP");
        await bench.SayAsync("DISP:LINE \"done\"");
        await bench.NextAsync("begin");
        Assert.Equal("end", (await bench.NextAsync()).GetProperty("event").GetString());
    }

    private static async Task FitAsync(ServedParts bench, string order, string beeps)
    {
        await bench.SayAsync($"DISP:LINE \"{order}\"");
        await bench.NextAsync("clip");
        await bench.SayAsync(beeps);
        await bench.NextAsync("unclip");
    }

    [Theory]
    [InlineData("survey,fit,check", 3)]
    [InlineData("survey,fit", 2)]
    [InlineData("none", 0)]
    public void Phases_are_read_in_their_order(string text, int count)
    {
        Assert.True(AutoSweep.Sim.Commands.HandsPhases.TryRead(text, out var phases));
        Assert.Equal(count, phases.Count);
    }

    private sealed class ServedParts : IAsyncDisposable
    {
        private readonly System.Diagnostics.Process process;
        private readonly System.Net.Sockets.TcpClient client;

        private readonly System.Text.Json.JsonElement ready;
        private TcpClientLines? levelMeter;

        private ServedParts(System.Diagnostics.Process process, System.Text.Json.JsonElement ready)
        {
            (this.process, this.ready) = (process, ready);
            client = new("127.0.0.1", Port("capacitanceMeter"));
        }

        public static async Task<ServedParts> StartAsync(string hands, int rate = Rate)
        {
            var process = SimProgram.Start(
                "serve", "--bench", "small", "--fixture", "tcp", "--hands", hands, "--events", "--clock-rate",
                rate.ToString(System.Globalization.CultureInfo.InvariantCulture));
            var ready = System.Text.Json.JsonDocument.Parse((await process.StandardOutput.ReadLineAsync())!).RootElement;
            return new(process, ready);
        }

        /// <summary>The level at the terminal in millivolts: the second reading, when the bang of the clip is over.</summary>
        public async Task<double> LevelAsync()
        {
            levelMeter ??= new(Port("meter"));
            await levelMeter.SendAsync("CONF:VOLT:AC 1;:DET:BAND 20;:SAMP:COUN 2\nREAD?\n");
            var volts = double.Parse((await levelMeter.LineAsync()).Split(',')[1], System.Globalization.CultureInfo.InvariantCulture);
            return volts * 1000 / ready.GetProperty("amplifierGain").GetDouble();
        }

        public Task BeepLevelMeterAsync() => levelMeter!.SendAsync("SYST:BEEP\n");

        public async Task SayAsync(string message) =>
            await client.GetStream().WriteAsync(System.Text.Encoding.ASCII.GetBytes(message + "\n"));

        public async Task<System.Text.Json.JsonElement> NextAsync(string what)
        {
            var told = await NextAsync();
            while (told.GetProperty("event").GetString() != what) told = await NextAsync();
            return told;
        }

        public async Task<System.Text.Json.JsonElement> NextAsync()
        {
            var line = await process.StandardOutput.ReadLineAsync().WaitAsync(Patience.Limit, TimeProvider.System);
            return System.Text.Json.JsonDocument.Parse(line!).RootElement;
        }

        private int Port(string instrument) =>
            int.Parse(ready.GetProperty(instrument).GetString()!.Split("::")[2], System.Globalization.CultureInfo.InvariantCulture);

        public async ValueTask DisposeAsync()
        {
            client.Dispose();
            levelMeter?.Dispose();
            process.StandardInput.Close();
            await process.WaitForExitAsync().WaitAsync(Patience.Limit, TimeProvider.System);
            process.Dispose();
        }
    }
}
