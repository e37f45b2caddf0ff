namespace AutoSweep.Pages.Tests.Support;

/// <summary>Programs that the tests look at pages with, where they are installed.</summary>
internal static class Tools
{
    private static readonly string[] Browsers = ["chromium", "chromium-browser", "google-chrome"];

    /// <summary>The browser; none where there is none.</summary>
    public static string? Chromium { get; } = Browsers.Select(Find).FirstOrDefault(path => path is not null);

    /// <summary>The full path of a program; none where it is not on the PATH.</summary>
    public static string? Find(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);

    /// <summary>Why a test cannot run here; none where it can.</summary>
    public static string? Missing =>
        Chromium is null ? "chromium is not installed: the record is not printed here; .ci/run installs it."
        : Find("pdftotext") is null ? "pdftotext (poppler-utils) is not installed: the printed record is not read here; .ci/run installs it."
        : null;
}
