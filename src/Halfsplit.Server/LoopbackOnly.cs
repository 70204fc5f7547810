namespace Halfsplit.Server;

/// <summary>
/// Answers only to a name of this machine: another site that points its own name at the loopback address gets nothing.
/// </summary>
internal sealed class LoopbackOnly(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (Loopback.IsHost(context.Request.Host.Host))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        return Task.CompletedTask;
    }
}
