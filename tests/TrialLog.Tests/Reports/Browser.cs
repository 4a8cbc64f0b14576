using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Tests.Tuning.References;

namespace TrialLog.Tests.Reports;

/// <summary>Headless Chromium, driven through its debugging protocol; one for all the tests that look at pages.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Programs = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-browser-").FullName;
    private Process? _process;

    /// <summary>Skips the test, saying so, where no Chromium is installed.</summary>
    public static void Required() =>
        Assert.SkipUnless(Programs.Any(File.Exists),
            "No Chromium found: the pages were NOT looked at. Install Debian's chromium to run this.");

    public async ValueTask InitializeAsync()
    {
        if (Programs.FirstOrDefault(File.Exists) is not { } program)
            return;
        _process = Process.Start(new ProcessStartInfo(program,
        [
            "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--hide-scrollbars", "--remote-debugging-port=0", $"--user-data-dir={_folder}",
                "about:blank",
        ])
        { RedirectStandardError = true, RedirectStandardOutput = true })!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        for (int tries = 0; !File.Exists(PortFile) || (await File.ReadAllLinesAsync(PortFile)).Length < 2; tries++)
        {
            Assert.True(tries < 300 && !_process.HasExited, "Chromium did not start.");
            await Task.Delay(100);
        }
    }

    private string PortFile => Path.Combine(_folder, "DevToolsActivePort");

    /// <summary>Opens a page of that HTML, as from a file.</summary>
    public async Task<BrowserPage> Open(string html, int width = 1200, int height = 900)
    {
        string file = Path.Combine(_folder, $"{Guid.NewGuid():N}.html");
        await File.WriteAllTextAsync(file, html);
        string port = (await File.ReadAllLinesAsync(PortFile))[0];
        using var http = new HttpClient();
        using HttpResponseMessage opened = await http.PutAsync($"http://127.0.0.1:{port}/json/new?about:blank", null);
        string address = JsonNode.Parse(await opened.Content.ReadAsStringAsync())!["webSocketDebuggerUrl"]!.GetValue<string>();
        var socket = new ClientWebSocket();
        await socket.ConnectAsync(new Uri(address), CancellationToken.None);
        var page = new BrowserPage(socket);
        await page.Load(new Uri(file).AbsoluteUri, width, height);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
            _process.Dispose();
        }

        try
        {
            Directory.Delete(_folder, recursive: true);
        }
        catch (IOException)
        {
            // The browser's own children may still be letting go of their files; the system's clean-up gets them.
        }
    }
}

/// <summary>One open page, and what happened in it: console messages, errors, requests.</summary>
public sealed class BrowserPage(ClientWebSocket socket) : IAsyncDisposable
{
    private int _last;

    /// <summary>Console messages, exceptions and refusals.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Addresses asked for, the page's own first.</summary>
    public List<string> Requests { get; } = [];

    internal async Task Load(string address, int width, int height)
    {
        foreach (string domain in new[] { "Page", "Runtime", "Log", "Network" })
            await Call($"{domain}.enable");
        await Resize(width, height);
        await Call("Page.navigate", new JsonObject { ["url"] = address });
        for (int tries = 0; await Evaluate("document.readyState + ' ' + location.href") != $"complete {address}"; tries++)
        {
            Assert.True(tries < 200, "The page did not load.");
            await Task.Delay(20);
        }

        await Task.Delay(100);
    }

    public Task Resize(int width, int height) => Call("Emulation.setDeviceMetricsOverride",
        new JsonObject { ["width"] = width, ["height"] = height, ["deviceScaleFactor"] = 1, ["mobile"] = width < 700 });

    /// <summary>Whether the page is laid out as for print.</summary>
    public Task AsPrinted(bool printed) => Call("Emulation.setEmulatedMedia", new JsonObject { ["media"] = printed ? "print" : "" });

    /// <summary>Whether the reader has chosen dark colours.</summary>
    public Task InTheDark(bool dark) => Call("Emulation.setEmulatedMedia", new JsonObject
    {
        ["features"] = new JsonArray(new JsonObject { ["name"] = "prefers-color-scheme", ["value"] = dark ? "dark" : "light" }),
    });

    /// <summary>What a script's promise comes to, as text.</summary>
    public async Task<string> EvaluateLater(string script)
    {
        JsonNode result = await Call("Runtime.evaluate",
            new JsonObject { ["expression"] = script, ["returnByValue"] = true, ["awaitPromise"] = true });
        Assert.True(result["exceptionDetails"] is null, result.ToJsonString());
        return result["result"]!["value"]?.ToString() ?? "";
    }

    /// <summary>The value of a script's expression, as text.</summary>
    public async Task<string> Evaluate(string script)
    {
        JsonNode result = await Call("Runtime.evaluate", new JsonObject { ["expression"] = script, ["returnByValue"] = true });
        Assert.True(result["exceptionDetails"] is null, result.ToJsonString());
        return result["result"]!["value"]?.ToString() ?? "";
    }

    /// <summary>The page as printed on paper of that size in inches, as its own style sets the margins.</summary>
    public async Task<byte[]> Print(double width, double height)
    {
        JsonNode result = await Call(
            "Page.printToPDF",
            new JsonObject
            {
                ["paperWidth"] = width, ["paperHeight"] = height, ["preferCSSPageSize"] = false,
                ["printBackground"] = false
            });
        return Convert.FromBase64String(result["data"]!.GetValue<string>());
    }

    private async Task<JsonNode> Call(string method, JsonObject? arguments = null)
    {
        int id = ++_last;
        var call = new JsonObject { ["id"] = id, ["method"] = method, ["params"] = arguments ?? [] };
        await socket.SendAsync(Encoding.UTF8.GetBytes(call.ToJsonString()), WebSocketMessageType.Text, true, CancellationToken.None);
        while (true)
        {
            JsonNode message = await Receive();
            if (message["id"]?.GetValue<int>() == id)
            {
                Assert.True(message["error"] is null, $"{method}: {message.ToJsonString()}");
                return message["result"]!;
            }

            Note(message);
        }
    }

    private void Note(JsonNode message)
    {
        switch (message["method"]?.GetValue<string>())
        {
            case "Log.entryAdded" or "Runtime.consoleAPICalled" or "Runtime.exceptionThrown":
                Complaints.Add(message.ToJsonString(new JsonSerializerOptions { WriteIndented = false }));
                break;
            case "Network.requestWillBeSent":
                Requests.Add(message["params"]!["request"]!["url"]!.GetValue<string>());
                break;
        }
    }

    private async Task<JsonNode> Receive()
    {
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        using var text = new MemoryStream();
        byte[] part = new byte[1 << 16];
        WebSocketReceiveResult received;
        do
        {
            received = await socket.ReceiveAsync(part, deadline.Token);
            text.Write(part, 0, received.Count);
        }
        while (!received.EndOfMessage);
        return JsonNode.Parse(text.ToArray())!;
    }

    public async ValueTask DisposeAsync()
    {
        await Call("Page.close");
        socket.Dispose();
    }
}
