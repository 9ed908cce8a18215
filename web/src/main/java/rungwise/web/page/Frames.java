package rungwise.web.page;

import jakarta.servlet.http.HttpServletRequest;

/** Makes the frame that belongs to a request: who is signed in and where he may go. */
@FunctionalInterface
public interface Frames {
  Frame frameOf(HttpServletRequest request);
}
