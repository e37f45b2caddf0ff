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

    [Theory]
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

        private ServedParts(System.Diagnostics.Process process, int port)
        {
            this.process = process;
            client = new("127.0.0.1", port);
        }

        public static async Task<ServedParts> StartAsync(string hands)
        {
            var process = SimProgram.Start(
                "serve", "--bench", "small", "--fixture", "tcp", "--hands", hands, "--events", "--clock-rate",
                Rate.ToString(System.Globalization.CultureInfo.InvariantCulture));
            var ready = System.Text.Json.JsonDocument.Parse((await process.StandardOutput.ReadLineAsync())!).RootElement;
            var resource = ready.GetProperty("capacitanceMeter").GetString()!;
            return new(process, int.Parse(resource.Split("::")[2], System.Globalization.CultureInfo.InvariantCulture));
        }

        public async Task SayAsync(string message) =>
            await client.GetStream().WriteAsync(System.Text.Encoding.ASCII.GetBytes(message + "\n"));

        public async Task<System.Text.Json.JsonElement> NextAsync(string what)
        {
            while (true)
            {
                var line = await process.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(20), TimeProvider.System);
                var told = System.Text.Json.JsonDocument.Parse(line!).RootElement;
                if (told.GetProperty("event").GetString() == what) return told;
            }
        }

        public async ValueTask DisposeAsync()
        {
            client.Dispose();
            process.StandardInput.Close();
            await process.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(10), TimeProvider.System);
            process.Dispose();
        }
    }
}
