using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using AutoSweep.Worker.Tests.Support;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Tests.Page.AtBench;

/// <summary>Parts of the bench screen as they are drawn.</summary>
public sealed class ScreenTests : IDisposable
{
    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);

    public void Dispose() => _job.Dispose();

    [Fact]
    public async Task A_bench_that_is_not_wired_leads_to_the_page_that_wires_it_and_offers_no_stage()
    {
        var html = await RestAsync(isWired: false);

        Assert.Contains("Wire up the bench", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Begin the survey", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bench_where_somebody_types_gives_no_choice_of_hands_free()
    {
        Assert.DoesNotContain("type=\"radio\"", await RestAsync(isTyped: true), StringComparison.Ordinal);
        Assert.Contains("type=\"radio\"", await RestAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_button_is_the_pedals_and_says_what_is_next()
    {
        _job.Append(new StageStarted(JobStage.Survey, [1, 2]));

        var html = await RestAsync();

        Assert.Equal(2, html.Split("data-pedal").Length);
        Assert.Contains("Go on with the survey", html[html.IndexOf("data-pedal", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_carries_its_place_and_time_for_who_measures_the_screen()
    {
        var reading = new ShownReading(417, DateTimeOffset.FromUnixTimeMilliseconds(1_772_355_600_250), 104_500, 4.25, true);

        var html = await RenderAsync<ReadingsView>(new() { [nameof(ReadingsView.Readings)] = new[] { reading } });

        Assert.Contains("data-reading=\"417\"", html, StringComparison.Ordinal);
        Assert.Contains("data-at=\"1772355600250\"", html, StringComparison.Ordinal);
        Assert.Contains("4.250 mV", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_number_on_the_map_is_named_with_its_state_for_who_hears_the_page()
    {
        _job.Append(new StageStarted(JobStage.Survey, [1, 2]));
        _job.Append(Some.Surveyed(1));

        var html = await RenderAsync<MapView>(new()
        {
            [nameof(MapView.Cells)] = MapCells.Of(_job.State, new() { Activity = Worker.Bench.BenchActivity.Waiting, Next = 2 }, JobStage.Survey),
        });

        Assert.Contains("done</span>", html, StringComparison.Ordinal);
        Assert.Contains("to do, next</span>", html, StringComparison.Ordinal);
    }

    private Task<string> RestAsync(bool isWired = true, bool isTyped = false) => RenderAsync<RestView>(new()
    {
        [nameof(RestView.Steps)] = JobSteps.Of(_job.State), [nameof(RestView.IsWired)] = isWired, [nameof(RestView.IsTyped)] = isTyped, [nameof(RestView.HandsFree)] = true,
    });

    private static async Task<string> RenderAsync<T>(Dictionary<string, object?> parameters)
        where T : IComponent
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<T>(ParameterView.FromDictionary(parameters))).ToHtmlString());
    }
}
